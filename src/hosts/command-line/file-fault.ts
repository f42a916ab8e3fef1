import { type FileRefusal, refusal } from "../../sheet/package/file-refusal.ts";

/** What the system says when a file cannot be read or written, as rule and finding. */
const FAULTS: Readonly<Record<string, readonly [rule: string, got: string, remedy?: string]>> = {
  EACCES: ["open to you", "no permission"],
  EPERM: ["open to you", "no permission"],
  EROFS: ["on a disk that can be written", "a read-only one"],
  ENOENT: ["in a folder that exists", "none there", "make the folder first"],
  EEXIST: ["a name that is free", "one that is taken", "give another name"],
  EINVAL: ["a name the disk takes", "another one"],
  ENXIO: ["a file", "a socket or a device"],
  ENODEV: ["a file", "a device"],
  ENOTDIR: ["in a folder that exists", "a file in place of the folder"],
  EISDIR: ["a file", "a folder"],
  ENOSPC: ["on a disk with room for it", "a full one", "nothing was changed"],
  EDQUOT: ["within your share of the disk", "more than that", "nothing was changed"],
  EFBIG: ["of a size the disk takes", "more than that", "nothing was changed"],
  ENAMETOOLONG: ["a name the disk takes", "one that is too long"],
  ELOOP: ["a link that ends at a file", "links in a circle"],
  EBUSY: ["free", "one that another program holds", "close it there"],
  ETXTBSY: ["free", "one that is running", "end it first"],
  EMFILE: ["opened beside fewer others", "too many open files"],
  ENFILE: ["opened beside fewer others", "too many open files"],
  EIO: ["on a sound disk", "an error of the disk"],
};

/** Of a file that is to be read, the folder may well exist. */
const MISSING = ["a file that exists", "nothing of that name"] as const;

/** An ordinary fault of reading or writing as a refusal; undefined for everything else, which is our own fault. */
export function fileFault(path: string, error: unknown, reason: "unreadable" | "unwritable"): FileRefusal | undefined {
  const code = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
  const fault = code === undefined ? undefined : reason === "unreadable" && code === "ENOENT" ? MISSING : FAULTS[code];
  return fault && refusal(reason, path, fault[0], fault[1], fault[2]);
}
