import type { MenuItemConstructorOptions } from 'electron';

/**
 * The menu bar. macOS needs one for its copy, paste and quit keys; elsewhere these work without, and the page has its own
 * ways to everything: null.
 */
export function menuOf(platform: NodeJS.Platform): MenuItemConstructorOptions[] | null {
  if (platform !== 'darwin') return null;
  return [
    { role: 'appMenu' },
    { role: 'editMenu' },
    { label: 'View', submenu: [{ role: 'resetZoom' }, { role: 'zoomIn' }, { role: 'zoomOut' }, { role: 'togglefullscreen' }] },
    { role: 'windowMenu' },
  ];
}
