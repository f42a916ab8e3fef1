/**
 * Plain low-carbon steels without coating that a shop offers for one another in the same gauge, the one usual in sheet
 * first (common practice; the customer agrees, because their strengths are promised differently).
 */
export const LIKE_STEELS: readonly string[] = ["A1011 CS", "A1008 CS", "A36"];
