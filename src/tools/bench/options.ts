import { parseArgs } from "node:util";

const EXIT_USAGE = 64;

/** What is where `--name N` is not given, and the least (1) and most it may be. */
type NumberOption = number | { readonly usual: number; readonly least?: number; readonly most?: number };

interface Taken<Numbers extends string, Texts extends string> {
  readonly numbers: Readonly<Record<Numbers, NumberOption>>;
  readonly texts?: readonly Texts[];
  /** The one file or folder it works on, as the usage names it: "FILE", or "[FILE]" where it may be left out. */
  readonly operand?: string;
}

/** What a benchmark was started with. Wrong use ends the run with the way it is used. */
export function benchOptions<Numbers extends string, Texts extends string = never>(
  usage: string,
  { numbers, texts = [], operand }: Taken<Numbers, Texts>,
) {
  const limits = Object.entries<NumberOption>(numbers);
  const text = [...Object.keys(numbers), ...texts].map((name) => [name, { type: "string" }] as const);
  try {
    const options: Record<string, { readonly type: "string" | "boolean" }> = {
      ...Object.fromEntries(text),
      json: { type: "boolean" },
    };
    const { values, positionals } = parseArgs({ allowPositionals: true, options });
    const [most, least] = operand ? [1, operand.startsWith("[") ? 0 : 1] : [0, 0];
    if (positionals.length > most || positionals.length < least)
      throw new Error(`${operand ? `one ${operand}` : "no word beside the options"} must be given`);
    const read = limits.map(([name, option]) => {
      const { usual, least = 1, most = Infinity } = typeof option === "number" ? { usual: option } : option;
      const value = Number(values[name] ?? usual);
      if (value >= least && value <= most) return [name, value];
      throw new Error(
        `--${name} must be a number from ${least}${most < Infinity ? ` to ${most}` : ""}; got ${values[name]}`,
      );
    });
    return {
      ...(values as Partial<Record<Texts, string>>),
      ...(Object.fromEntries(read) as Record<Numbers, number>),
      json: values["json"] === true,
      operand: positionals[0] ?? "",
    };
  } catch (error) {
    process.stderr.write(`${(error as Error).message}\nusage: ${usage}\n`);
    process.exit(EXIT_USAGE);
  }
}
