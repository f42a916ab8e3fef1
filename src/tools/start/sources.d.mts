interface SourcePath {
  readonly path: string;
}
export function sourceFiles(root: string): readonly SourcePath[];
export function contentHash(files: readonly SourcePath[]): string;
