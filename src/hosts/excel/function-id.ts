/**
 * BEND.SETBACK -> BEND_SETBACK. Files saved by Excel store a call under the id with dots as underscores; an id without
 * dots is stored the same whichever of the two, id or name, a version of Excel writes.
 */
export const functionId = (name: string): string => name.replaceAll(".", "_");
