/**
 * What an author can choose in the editor: as it comes in `initializationOptions`, and as it changes while the server
 * runs (Language Server Protocol 3.17, `workspace/didChangeConfiguration` and `workspace/configuration`).
 */
import {
  type ClientCapabilities,
  CodeLensRefreshRequest,
  type Connection,
  DidChangeConfigurationNotification,
} from 'vscode-languageserver/node';

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

export interface FollowedSettings {
  readonly now: Settings;
  /** What the editor sent at the start. */
  begin(sent: unknown): void;
  /** Asks to be told of changes; not before the session is initialized. */
  follow(): void;
}

/**
 * Settings that follow the editor. One that sends them with the news is believed; one that only says that something
 * has changed is asked. Hints and lenses are then asked for anew, where the editor can be told to.
 */
export function followSettings(connection: Connection, client: () => ClientCapabilities): FollowedSettings {
  let now = USUAL;
  const take = (sent: unknown): void => {
    const before = JSON.stringify(now);
    now = settingsFrom(sent);
    if (JSON.stringify(now) === before) return;
    const { inlayHint, codeLens } = client().workspace ?? {};
    if (inlayHint?.refreshSupport) connection.languages.inlayHint.refresh().catch(notTold);
    if (codeLens?.refreshSupport) connection.sendRequest(CodeLensRefreshRequest.type).catch(notTold);
  };
  connection.onDidChangeConfiguration(async ({ settings: sent }) => {
    const own = field(sent, 'dowel');
    if (own !== undefined) take(own);
    else if (client().workspace?.configuration) {
      const asked = await connection.workspace.getConfiguration('dowel').catch(notTold);
      // An editor that cannot answer keeps what it had.
      if (asked !== undefined && asked !== null) take(asked);
    }
  });
  return {
    get now() {
      return now;
    },
    begin: (sent) => {
      now = settingsFrom(sent);
    },
    follow: () => {
      if (!client().workspace?.didChangeConfiguration?.dynamicRegistration) return;
      connection.client
        .register(DidChangeConfigurationNotification.type, { section: 'dowel' })
        .catch(notTold);
    },
  };
}

/** The editor refused or is gone: what is shown stays as it is until it asks by itself. */
function notTold(): void {}
