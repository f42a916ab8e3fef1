/** One change after another: what is taken back is what was changed last, however fast the keys. */
let turn: Promise<unknown> = Promise.resolve();

export function inTurn<T>(action: () => Promise<T>): Promise<T> {
  const done = turn.then(action, action);
  turn = done;
  return done;
}
