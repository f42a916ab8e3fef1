/** Runs the action while no other run does, in this process or another, that names the same file. */
export function withLock<T>(file: string, action: () => T | Promise<T>): Promise<T>;
