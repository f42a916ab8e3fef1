/**
 * The pages as HTML: one shell, and what the page of a bill and that of the week put into it. Styles stand in the page, so
 * that the first paint waits for no second file.
 */
export interface Page {
  readonly title: string;
  /** The attribute by which the styles know what is shown. */
  readonly body: string;
  readonly script: string;
  readonly opening: string;
  readonly bar: string;
  readonly main: string;
  readonly foot: string;
}

export const BILL_PAGE: Page = {
  title: "Bracket Bill",
  body: 'data-screen="list"',
  script: "page.js",
  opening: "Opening the workbook…",
  bar: `
      <button type="button" id="back">‹ Back</button>
      <fieldset id="counters" class="counters" aria-label="Lines shown"></fieldset>
      <div class="actions">
        <span id="problem"></span>
        <button type="button" id="previous" disabled>‹ Previous</button>
        <button type="button" id="next" class="main" disabled>Next ›</button>
        <button type="button" id="undo" disabled title="Ctrl+Z">Undo</button>
        <button type="button" id="redo" disabled title="Ctrl+Y">Redo</button>
        <button type="button" id="save" disabled>Save a copy</button>
      </div>`,
  main: `
      <section id="work" aria-label="Bill"></section>
      <section id="line" aria-label="Selected line" tabindex="-1">
        <p class="hint">Select a line to see its drawing, what is wrong and what fixes it.</p>
      </section>`,
  foot: `
      <nav id="places" aria-label="Work and tables"></nav>
      <p id="keys"></p>
      <p>The machine's plate, local codes and licensed practice decide. Nothing here leaves this computer.</p>`,
};

const KEYS = [
  ["Arrows", "from bar to bar"],
  ["Enter", "pick up a bar, put it down"],
  ["← →", "an hour"],
  ["Shift+← →", "a day"],
  ["Esc", "leave it"],
  ["Ctrl+Z", "undo"],
];

export const WEEK_PAGE: Page = {
  title: "The week: Bracket Bill",
  body: 'data-place="week"',
  script: "week-page.js",
  opening: "Reading the jobs…",
  bar: `
      <p id="told"></p>
      <div class="actions">
        <button type="button" id="undo" disabled title="Ctrl+Z">Undo</button>
      </div>`,
  main: `
      <section id="week" aria-label="Jobs on their days"></section>
      <section id="beside" aria-label="What is late and what was moved"></section>`,
  foot: `
      <p id="keys">${KEYS.map(([key, does]) => `<span><kbd>${key}</kbd> ${does}</span>`).join(" ")}</p>
      <p>Moves are kept on this page, in no workbook. Nothing here leaves this computer.</p>`,
};

/** @param styles as CSS. */
export const pageHtml = ({ title, body, script, opening, bar, main, foot }: Page, styles: string): string =>
  `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <title>${title}</title>
    <style>${styles}</style>
    <script type="module" src="${script}"></script>
  </head>
  <body ${body}>
    <header>
      <h1>Bracket Bill</h1>
      <p id="file">${opening}</p>
      <dl id="figures"></dl>
    </header>
    <section id="bar" aria-label="What is shown and done">${bar}
    </section>
    <div id="news">
      <p id="message" role="status"></p>
      <p id="progress"><span id="progress-words"></span> <button type="button" id="cancel" hidden>Stop</button></p>
    </div>
    <main>${main}
    </main>
    <footer>${foot}
    </footer>
  </body>
</html>
`;
