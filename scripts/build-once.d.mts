export function buildOnce(build: {
  readonly root: string;
  readonly name: string;
  readonly takes: (path: string) => boolean;
  readonly besides: readonly string[];
  readonly make: (folder: string) => Promise<void>;
}): Promise<string>;
