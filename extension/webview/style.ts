/** How panels look: in the colours of the editor's theme, high contrast included. */

export interface Theme {
  dark: boolean;
  contrast: boolean;
}

/**
 * A published page asks the system whether it is dark or wants more contrast; in a panel the theme answers. The
 * questions are replaced by ones that are always true or always false.
 */
export function styleAsThemed(style: string, { dark, contrast }: Theme): string {
  const answer = (yes: boolean) => (yes ? '(min-width: 0px)' : '(max-width: 0px)');
  return style
    .replace(/\(\s*prefers-color-scheme\s*:\s*dark\s*\)/g, answer(dark))
    .replace(/\(\s*prefers-color-scheme\s*:\s*light\s*\)/g, answer(!dark))
    .replace(/\(\s*prefers-contrast\s*:\s*more\s*\)/g, answer(contrast))
    .replace(/color-scheme\s*:\s*light dark/g, `color-scheme: ${dark ? 'dark' : 'light'}`);
}

export const PANEL_STYLE = `
:root {
  --dowel-paper: var(--vscode-editor-background);
  --dowel-accent: var(--vscode-focusBorder, currentColor);
  --dowel-font: var(--vscode-font-family);
}
body.dowel-map, body.dowel-chart {
  color: var(--vscode-editor-foreground); background: var(--vscode-editor-background);
  font-family: var(--vscode-font-family); font-size: var(--vscode-font-size); padding: 3rem 1rem 1rem;
}
body.dowel-preview { padding: 0; }
#zoom:not([hidden]) { position: fixed; top: .5rem; right: 1rem; display: flex; gap: .25rem; z-index: 1; }
#zoom button {
  font: inherit; min-width: 2rem; padding: .15rem .5rem; cursor: pointer; border-radius: 2px;
  color: var(--vscode-button-secondaryForeground); background: var(--vscode-button-secondaryBackground);
  border: 1px solid var(--vscode-button-border, var(--vscode-contrastBorder, transparent));
}
#zoom button:hover { background: var(--vscode-button-secondaryHoverBackground); }
#zoom button:focus-visible { outline: 2px solid var(--vscode-focusBorder); outline-offset: 1px; }
#empty { padding: 1rem; color: var(--vscode-descriptionForeground); font-family: var(--vscode-font-family); }
.dowel-map figure, .dowel-chart figure { margin: 0; }
.dowel-map .scroll, .dowel-chart .scroll { overflow: auto; }
.dowel-map svg, .dowel-chart svg { max-width: none; }
.dowel-map summary, .dowel-chart summary { cursor: pointer; margin: 1rem 0 .5rem; }
.dowel-map table, .dowel-chart table { border-collapse: collapse; }
.dowel-map :is(th, td), .dowel-chart :is(th, td) {
  border: 1px solid var(--vscode-widget-border, var(--vscode-contrastBorder, currentColor)); padding: .25rem .5rem; text-align: start;
}
.dowel-place { cursor: pointer; }
.dowel-preview .dowel-place:hover { background: var(--vscode-list-hoverBackground); }
.dowel-preview .dowel-here {
  --dowel-here: var(--vscode-editor-lineHighlightBackground, var(--paper, transparent));
  background: var(--dowel-here);
  /* Between bar and step there is air: at the step's left edge is a box to tick. */
  box-shadow: -.4rem 0 0 0 var(--dowel-here), calc(-.4rem - 4px) 0 0 0 var(--vscode-editorCursor-foreground, var(--vscode-focusBorder));
}
svg .dowel-here { color: var(--vscode-textLink-foreground); font-weight: bold; outline: 2px dashed var(--vscode-focusBorder); outline-offset: 2px; }
/* Rows of a chart lie close to each other. */
.dowel-chart svg .dowel-here { outline-width: 1px; outline-offset: 0; }
/* Over all marks. */
body .dowel-place.dowel-place:focus-visible { outline: 2px solid var(--vscode-focusBorder); outline-offset: 2px; }
body.dowel-chart .dowel-place.dowel-place:focus-visible { outline-offset: 0; }
svg .dowel-place:hover { color: var(--vscode-textLink-activeForeground, var(--vscode-textLink-foreground)); }
`;
