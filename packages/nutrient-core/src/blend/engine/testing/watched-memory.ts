/** What a calculation did with its working memory. */
export interface Work {
  reads: number;
  writes: number;
}

/** Far more than any blend takes; what has lost its way ends here. */
const MOST_READS = 2_000_000;

/**
 * Working memory that counts every number read or written, and throws where one lies outside its vector: a typed array
 * itself answers `undefined` there, or forgets what is written, without a word.
 */
export function watchedMemory(work: Work): typeof import("../memory.ts") {
  const takeFloats = (count: number): Float64Array => watch(new Float64Array(count), work);
  return {
    startMemory: () => {},
    takeFloats,
    copyFloats: (from) => {
      const piece = takeFloats(from.length);
      piece.set(from);
      return piece;
    },
  };
}

function watch(array: Float64Array, work: Work): Float64Array {
  const place = (name: string | symbol): number => {
    if (typeof name === "symbol") return -1;
    const at = Number(name);
    if (Number.isNaN(at)) return -1;
    if (!(Number.isInteger(at) && at >= 0 && at < array.length)) {
      throw new Error(`place ${name} of a vector of ${array.length}`);
    }
    return at;
  };
  const watched: Float64Array = new Proxy(array, {
    get: (_, name) => {
      if (place(name) >= 0 && ++work.reads > MOST_READS) throw new Error("there is no end to it");
      const member: unknown = Reflect.get(array, name);
      if (name === "subarray") {
        return (from: number, to = array.length) => {
          if (!(from >= 0 && to >= from && to <= array.length)) throw new Error(`a piece from ${from} to ${to}`);
          return watch(array.subarray(from, to), work);
        };
      }
      if (name === "fill") {
        return (...of: [number, number?, number?]) => {
          array.fill(...of);
          return watched;
        };
      }
      return typeof member === "function" ? member.bind(array) : member;
    },
    set: (_, name, value: number) => {
      if (place(name) >= 0) work.writes++;
      return Reflect.set(array, name, value);
    },
  });
  return watched;
}
