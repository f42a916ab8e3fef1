/** Pieces are named after their pattern: "3", "3.1", "3r2", "3.1.2". */
export const patternIdOf = (piece: string): string => /^\d+/.exec(piece)?.[0] ?? piece;
