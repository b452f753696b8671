/** What panels beside the text show: a piece of a page, and which element of it belongs to which place of the text. */
import type { Range } from 'vscode-languageserver/node';

export interface Shown {
  /** What the panel is called. */
  title: string;
  /** A whole page, or one drawing; holds nothing that is fetched. */
  html: string;
  places: ShownPlace[];
}

export interface ShownPlace {
  /** How the element is found: by its `id`, its `data-thing` or its `data-step`. */
  by: 'id' | 'thing' | 'step';
  key: string;
  uri: string;
  range: Range;
}
