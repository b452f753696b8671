/** Once before all tests in the editor: the workbench is installed where it is missing. */
import { install } from './install.mjs';

export default function setup(): void {
  install();
}
