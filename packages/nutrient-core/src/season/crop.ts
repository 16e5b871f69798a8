/** What a grower can see in a plant, and what is known from the start. */
export const MILESTONES = ["sown", "set-out", "first-flower", "first-fruit-set", "first-harvest", "end"] as const;
export type Milestone = (typeof MILESTONES)[number];
