/**
 * The usual caution and deference, in one line: it stands under every report about work that can hurt somebody. A check
 * reads a text; the machine, the site and the law are not in it.
 */
export const DEFERENCE =
  'Only the text was checked, not the machine: a text without findings is no proof of safe work. Local codes and licensed practice come first.';
