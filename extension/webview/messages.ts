/** What the editor and the page in a panel say to each other. */
export interface ElementKey {
  by: 'id' | 'thing' | 'step';
  key: string;
}

export type ToPanel =
  | { type: 'show'; html: string; empty: string; elements: ElementKey[] }
  | { type: 'mark'; elements: number[]; reveal: boolean };

/** `focus`: the text gets the focus, too. */
export type FromPanel = { type: 'ready' } | { type: 'go'; element: number; focus: boolean };
