/** The ways out a rule may name. */
export type RemedyName = string;
