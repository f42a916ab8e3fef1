import type { Streams } from "./command.ts";

interface ProgressBar {
  step(name: string): void;
  /** A line of its own, above the bar. */
  say(line: string): void;
  end(): void;
}

const WIDTH = 30;

/** A bar on standard error where a person watches and there is more than one file; else only the lines. */
export function progressBar(total: number, streams: Streams): ProgressBar {
  const drawn = streams.interactive && total > 1;
  let done = 0;
  const draw = (name: string): void => {
    if (!drawn) return;
    const filled = Math.round((WIDTH * done) / total);
    const bar = "#".repeat(filled).padEnd(WIDTH, ".");
    streams.note(`\r\u001b[K[${bar}] ${done}/${total} ${name.slice(-40)}`);
  };
  return {
    step: (name) => {
      done++;
      draw(name);
    },
    say: (line) => {
      streams.note(drawn ? `\r\u001b[K${line}\n` : `${line}\n`);
      draw("");
    },
    end: () => {
      if (drawn) streams.note("\r\u001b[K");
    },
  };
}
