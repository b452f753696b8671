/** What an author can choose in the editor, as it comes in `initializationOptions` or `workspace/configuration`. */

export interface Settings {
  inlayHints: {
    /** The other system's unit behind a quantity. */
    secondUnit: boolean;
    /** How many there are of a group that a step names. */
    count: boolean;
    /** How many things are off, loose or open behind each task. */
    thingsOff: boolean;
  };
  codeLens: boolean;
}

export const USUAL: Settings = {
  inlayHints: { secondUnit: true, count: true, thingsOff: true },
  codeLens: true,
};

/** Settings as an editor sent them: what it left out, or sent in a wrong shape, is as usual. */
export function settingsFrom(sent: unknown): Settings {
  const group = field(sent, 'inlayHints');
  const flag = (value: unknown, usual: boolean) => (typeof value === 'boolean' ? value : usual);
  return {
    inlayHints: {
      secondUnit: flag(field(group, 'secondUnit'), flag(group, USUAL.inlayHints.secondUnit)),
      count: flag(field(group, 'count'), flag(group, USUAL.inlayHints.count)),
      thingsOff: flag(field(group, 'thingsOff'), flag(group, USUAL.inlayHints.thingsOff)),
    },
    codeLens: flag(field(sent, 'codeLens'), USUAL.codeLens),
  };
}

function field(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined;
}
