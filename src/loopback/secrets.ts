import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

export const TICKET_LIFE_MS = 60_000;

/** 256 random bits, fit for a URL, a cookie and a header. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

/** Compares by hash, so that the time taken says nothing about where or by how much the two differ. */
export function isSameSecret(offered: string, kept: string): boolean {
  return timingSafeEqual(hashOf(offered), hashOf(kept));
}

export interface Tickets {
  /** A ticket good for one use within a minute. */
  issue(): string;
  redeem(ticket: string): boolean;
}

/** @param elapsedMs a clock that never goes back, in milliseconds. */
export function createTickets(elapsedMs: () => number): Tickets {
  const issued = new Map<string, number>();
  return {
    issue() {
      const ticket = newSecret();
      issued.set(keyOf(ticket), elapsedMs());
      return ticket;
    },
    redeem(ticket) {
      const issuedAt = issued.get(keyOf(ticket));
      issued.delete(keyOf(ticket));
      return issuedAt !== undefined && elapsedMs() - issuedAt <= TICKET_LIFE_MS;
    },
  };
}

/** Looking up by hash: what a lookup's time could tell is about the hash, not about the ticket. */
function keyOf(ticket: string): string {
  return hashOf(ticket).toString('hex');
}

function hashOf(secret: string): Buffer {
  return createHash('sha256').update(secret).digest();
}
