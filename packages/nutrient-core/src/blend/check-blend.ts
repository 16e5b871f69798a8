import type { BlendCertificate } from "./blend-result.ts";
import { type CertificateReport, checkCertificate } from "./engine/certificate.ts";

/**
 * Does the certificate prove the blend, by a few multiplications and without the solver?
 *
 * @param certificate As a blend returned it, also after it was written as JSON and read back (JSON has no infinity:
 *   a null limit is none).
 * @returns Whether every promise holds to 1e-9, and which does not.
 * @example
 * const made = blend({ products: [kno3], purpose: { kind: "ratio", ratio: [1, 0, 3], batchGrams: 100 }, already: {}, within: 0 });
 * checkBlendCertificate(made.value.certificate)  // => { valid: true, failures: [] }
 */
export function checkBlendCertificate(certificate: BlendCertificate): CertificateReport {
  const { problem, solution, proofs, search } = certificate;
  const upper = problem.upper?.map((most: number | null) => most ?? Number.POSITIVE_INFINITY);
  return checkCertificate(
    { ...problem, ...(upper ? { upper } : {}) },
    { ...solution, certificate: { proofs, ...(search ? { search } : {}) } },
  );
}
