import { describe, expect, it } from 'vitest';
import { createTickets, isSameSecret, newSecret, TICKET_LIFE_MS } from '../../src/loopback/secrets.ts';

describe('a secret', () => {
  it('has 256 bits and never comes twice', () => {
    const secrets = Array.from({ length: 100 }, newSecret);
    expect(new Set(secrets).size).toBe(100);
    for (const secret of secrets) expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
  });
  it('is the same only as itself', () => {
    expect(isSameSecret('abc', 'abc')).toBe(true);
    expect(isSameSecret('abd', 'abc')).toBe(false);
    expect(isSameSecret('', 'abc')).toBe(false);
    expect(isSameSecret('abcabc', 'abc')).toBe(false);
  });
});

describe('a ticket', () => {
  it('is good once', () => {
    const tickets = createTickets(() => 0);
    const ticket = tickets.issue();
    expect(tickets.redeem(ticket)).toBe(true);
    expect(tickets.redeem(ticket)).toBe(false);
  });
  it('is good for a minute', () => {
    let nowMs = 5_000;
    const tickets = createTickets(() => nowMs);
    const [early, late] = [tickets.issue(), tickets.issue()];
    nowMs += TICKET_LIFE_MS;
    expect(tickets.redeem(early)).toBe(true);
    nowMs += 1;
    expect(tickets.redeem(late)).toBe(false);
  });
  it('cannot be guessed into being', () => {
    expect(createTickets(() => 0).redeem('anything')).toBe(false);
  });
});
