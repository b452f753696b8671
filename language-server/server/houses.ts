/**
 * What the house has agreed on, for the documents of an editor: the configuration file in the folder of each, or in the
 * nearest folder above it. Read anew where its text has changed; paths are URIs.
 */
import { readConfig } from '../config/config.ts';
import { CONFIG_NAME } from '../config/house.ts';
import { houseOf, type UsedConfig } from '../config/use.ts';
import type { House, SourceHost } from '../project/project.ts';

export class Houses {
  private readonly host: SourceHost;
  private readonly read = new Map<string, UsedConfig & { text: string }>();
  /** Folder -> configuration, until something on the disk has changed. */
  private readonly above = new Map<string, string | undefined>();

  constructor(host: SourceHost) {
    this.host = host;
  }

  houseOf(uri: string): House | undefined {
    return this.usedFor(uri)?.house;
  }

  /** The configuration that holds for a document, with what is wrong with it. */
  usedFor(uri: string): (UsedConfig & { uri: string }) | undefined {
    if (!uri.startsWith('file:')) return undefined;
    const config = this.configAbove(new URL('.', uri).href);
    const text = config === undefined ? undefined : this.host.read(config);
    if (config === undefined || text === undefined) return undefined;
    let known = this.read.get(config);
    if (known?.text !== text) {
      known = { ...houseOf(readConfig(text, config), this.host, config), text };
      this.read.set(config, known);
    }
    return { ...known, uri: config };
  }

  /** Files came, went or changed. */
  forget(): void {
    this.above.clear();
    this.read.clear();
  }

  private configAbove(folder: string): string | undefined {
    if (this.above.has(folder)) return this.above.get(folder);
    const own = new URL(CONFIG_NAME, folder).href;
    const parent = new URL('..', folder).href;
    const found =
      this.host.read(own) !== undefined ? own : parent === folder ? undefined : this.configAbove(parent);
    this.above.set(folder, found);
    return found;
  }
}
