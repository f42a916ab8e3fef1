/** The jobs' files as the server of the page keeps them: read, and watched for what somebody else does to them. */
import { itemAt } from "../../../units/certain.ts";
import type { WeekFile } from "./protocol.ts";

export interface ServedJobs {
  readonly names: readonly string[];
  /** ISO; null: by the clock. */
  readonly now: string | null;
  readonly files: readonly WeekFile[];
  readonly versions: readonly (string | null)[];
  readonly shop: Uint8Array | undefined;
}

const bytesOf = async (answer: Response) => new Uint8Array(await answer.arrayBuffer());

export async function servedJobs(): Promise<ServedJobs> {
  const { names, now, hasShop } = (await (await fetch("week")).json()) as {
    names: readonly string[];
    now: string | null;
    hasShop: boolean;
  };
  const answers = await Promise.all(names.map((_, i) => fetch(`${i}/workbook`)));
  return {
    names,
    now,
    files: await Promise.all(
      answers.map(async (answer, i) => ({
        name: itemAt(names, i),
        bytes: answer.ok ? await bytesOf(answer) : await answer.text(),
      })),
    ),
    versions: answers.map(({ headers }) => headers.get("x-version")),
    shop: hasShop ? await bytesOf(await fetch("shop")) : undefined,
  };
}

/** Names of jobs whose files are others by now. */
export async function changedJobs({ names, versions }: ServedJobs): Promise<string[]> {
  const now = await Promise.all(
    names.map((_, i) => fetch(`${i}/version`).then((answer) => (answer.ok ? answer.text() : null))),
  );
  return names.filter((_, i) => now[i] !== versions[i]);
}
