import type { LiveFinding } from '../domain/sexing/live/liveSign.ts';

export const LIVE_KIND_LABELS: Readonly<Record<LiveFinding['kind'], string>> = {
  'palpal-bulbs': 'Palpal bulbs',
  'tibial-hooks': 'Hooks on the tibiae',
  'sperm-web': 'A sperm web',
  'egg-sac': 'An egg sac',
  'ventral-fusillae': 'A look from below, for fusillae',
  impression: 'An impression only',
};

const FERTILE = { yes: ', fertile', no: ', not fertile', 'not-known': '' } as const;
const IMPRESSIONS = { ventral: 'from below', color: 'by color', build: 'by build', seller: 'by a seller’s word' } as const;

/** One thing seen of the animal itself. */
export function findingInWords(finding: LiveFinding): string {
  switch (finding.kind) {
    case 'palpal-bulbs':
      return finding.seen ? 'palpal bulbs seen' : 'looked for palpal bulbs, none';
    case 'tibial-hooks':
      return finding.seen ? 'hooks on the tibiae seen' : 'looked for hooks, none (says nothing)';
    case 'sperm-web':
      return 'a sperm web seen';
    case 'egg-sac':
      return `an egg sac laid${FERTILE[finding.fertile]}`;
    case 'ventral-fusillae': {
      const span = finding.legSpanMm === null ? '' : `, at ${finding.legSpanMm} mm leg span`;
      return `from below: ${finding.seen ? 'fusillae seen' : 'no fusillae'}${span}`;
    }
    case 'impression':
      return `an impression ${IMPRESSIONS[finding.from]}: ${finding.towards}`;
  }
}
