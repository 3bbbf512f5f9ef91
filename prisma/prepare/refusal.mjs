// @ts-check

/** Why the database cannot be used, as a whole sentence for the person who starts Holdfast. */
export class Refusal extends Error {}
