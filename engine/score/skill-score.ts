/** Skill against a named reference: 1 perfect, 0 no better, negative worse. Units: both scores alike, smaller is better; dimensionless. Valid: a reference above 0. Outside: null. Source: definition (BoM-Verification). */
export const skillScore = (score: number, ofReference: number): number | null => (ofReference > 0 ? 1 - score / ofReference : null);
