/** The page is seen before anything heavy begins. A page in the background is never painted, and must open all the same. */
export const painted = () =>
  Promise.race([
    new Promise((done) => requestAnimationFrame(() => setTimeout(done))),
    new Promise((done) => setTimeout(done, 200)),
  ]);
