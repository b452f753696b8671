/** Which files are read for one file: itself, what it uses, and what every file of its house uses. */
import { type LoadedFile, Loader } from '../model/names.ts';
import type { House, SourceHost } from '../project/project.ts';

/** Also those that it names and that could not be had: once they are there, the result is another. */
export function checkUses(host: SourceHost, path: string): string[] {
  const house = host.houseOf?.(path);
  const loader = new Loader(host, house?.ruleFiles);
  const file = loader.load(path);
  return file ? readFor(host, loader.visible(file), house) : [path];
}

/** The files seen from one file, and those that any of them names. */
export function readFor(
  host: SourceHost,
  visible: readonly LoadedFile[],
  house: House | undefined,
): string[] {
  const named = visible.flatMap((file) =>
    file.parsed.tree.items.flatMap((item) =>
      item.kind === 'use' && item.path ? [host.resolve(file.path, item.path.value)] : [],
    ),
  );
  return [...new Set([...visible.map(({ path }) => path), ...named, ...(house?.ruleFiles ?? [])])];
}
