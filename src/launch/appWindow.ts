const QUIET = [
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-extensions',
  '--disable-features=Translate,MediaRouter',
  // The fresh profile has no secrets to keep, so no keyring need be unlocked for it.
  '--password-store=basic',
  '--use-mock-keychain',
];

export interface AppWindow {
  /** With its one-use ticket. */
  readonly url: string;
  /** An empty folder of our own, so that neither the keeper's profile nor its extensions come near the archive. */
  readonly profile: string;
  /** A browser refuses its own sandbox to root on Linux; only then is it given up. */
  readonly asRoot: boolean;
}

export function appWindowArguments({ url, profile, asRoot }: AppWindow): readonly string[] {
  return [`--app=${url}`, `--user-data-dir=${profile}`, '--window-size=1440,900', ...QUIET, ...(asRoot ? ['--no-sandbox'] : [])];
}
