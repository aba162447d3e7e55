import { app, session, type WebFrameMain } from 'electron';
import { openOutside } from './openOutside.ts';
import { SCHEME } from './policy/address.ts';
import { mayAsk } from './policy/frames.ts';
import { mayNavigate } from './policy/navigation.ts';
import { mayEnter } from './policy/permissions.ts';

/** Every window and frame, however it came about: goes nowhere but to our page, opens no windows, holds no webviews. */
export function guardNavigation(): void {
  app.on('web-contents-created', (_, contents) => {
    const hold = (details: { url: string; preventDefault(): void }): void => {
      if (!mayNavigate(details.url)) details.preventDefault();
    };
    contents.on('will-navigate', hold);
    contents.on('will-redirect', hold);
    contents.on('will-frame-navigate', hold);
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.setWindowOpenHandler(({ url }) => {
      openOutside(url);
      return { action: 'deny' };
    });
  });
}

/** Only our own page, in a frame chain that is all ours, gets answers under our scheme. */
export function guardRequests(): void {
  session.defaultSession.webRequest.onBeforeRequest({ urls: [`${SCHEME}://*/*`] }, (details, answer) => {
    const { url, resourceType, frame, initiatorOrigin } = details;
    answer({ cancel: !mayAsk({ url, resourceType, frames: chainOf(frame), initiatorOrigin: initiatorOrigin ?? null }) });
  });
}

/** Chromium grants everything unless it is asked to ask. */
export function guardPermissions(): void {
  const { defaultSession } = session;
  defaultSession.setPermissionRequestHandler((_, permission, answer, { requestingUrl }) => answer(mayEnter(permission, requestingUrl)));
  defaultSession.setPermissionCheckHandler((_, permission, requestingOrigin) => mayEnter(permission, requestingOrigin));
  defaultSession.setDevicePermissionHandler(() => false);
}

function chainOf(frame: WebFrameMain | null | undefined): readonly string[] {
  const chain: string[] = [];
  for (let at = frame ?? null; at !== null; at = at.parent) chain.push(at.url);
  return chain;
}
