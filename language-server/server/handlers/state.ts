/**
 * `dowel/state`: how the machine stands before a step, as a tree for a panel beside the text. Params
 * `{ uri, position }`; the answer is null outside a procedure, else
 * `{ procedure, title, groups: [{ state, things: [{ name, title, type, positions?, case?, declared, since? }] }] }`,
 * where `declared` and `since` (the step that made it so, with its text) are places to go to.
 */
import type { Location, Position } from 'vscode-languageserver/node';
import { stateIn } from '../../features/state-at.ts';
import type { Place } from '../../report/finding.ts';
import { type Handler, offsetOf } from './handler.ts';

export interface StateTree {
  procedure: string;
  title: string;
  groups: {
    state: string;
    things: {
      name: string;
      title: string;
      type: string;
      positions?: string[];
      case?: string;
      declared?: Location;
      since?: Location & { text: string };
    }[];
  }[];
}

export const state: Handler = {
  capabilities: {},
  register(services) {
    const { connection, view, lines, host } = services;
    const stepAt = (place: Place) => ({
      ...lines.location(place.file, place),
      // The first line of the step as it is written.
      text: (host.read(place.file) ?? '').slice(place.start, place.end).split('\n')[0]!.trim(),
    });
    connection.onRequest(
      'dowel/state',
      ({ uri, position }: { uri: string; position: Position }): StateTree | null => {
        const offset = offsetOf(services, uri, position);
        const found = stateIn(view(), uri, offset);
        const model = view().sceneAt(uri, offset)?.model;
        if (!found) return null;
        return {
          ...found,
          groups: found.groups.map(({ state: word, things }) => ({
            state: word,
            things: things.map(({ since, ...thing }) => {
              const declared = model?.byName.get(thing.name)?.place;
              return {
                ...thing,
                ...(declared ? { declared: lines.location(declared.file, declared) } : {}),
                ...(since ? { since: stepAt(since) } : {}),
              };
            }),
          })),
        };
      },
    );
  },
};
