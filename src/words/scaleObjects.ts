import type { CoinName, RectangleObject, ScaleMarks } from '../domain/measuring/calibration.ts';

export const SCALE_OBJECT_LABELS: Readonly<Record<RectangleObject | 'two-points', string>> = {
  'two-points': 'A rule, or a length you know',
  'id-1': 'A bank-size card (ISO/IEC 7810 ID-1)',
  a6: 'A6 sheet',
  a5: 'A5 sheet',
  a4: 'A4 sheet',
  own: 'Another rectangle of known size',
};

export const COIN_LABELS: Readonly<Record<CoinName | 'own', string>> = {
  'us-cent': 'US cent',
  'us-nickel': 'US nickel (5 cents)',
  'us-dime': 'US dime (10 cents)',
  'us-quarter': 'US quarter dollar',
  'us-half-dollar': 'US half dollar',
  'us-dollar': 'US dollar coin',
  'euro-1-cent': '1 euro cent',
  'euro-2-cent': '2 euro cents',
  'euro-5-cent': '5 euro cents',
  'euro-10-cent': '10 euro cents',
  'euro-20-cent': '20 euro cents (notched)',
  'euro-50-cent': '50 euro cents',
  'euro-1': '1 euro',
  'euro-2': '2 euros',
  own: 'Another disk of known diameter',
};

export function scaleObjectName(marks: ScaleMarks): string {
  switch (marks.kind) {
    case 'two-points':
      return SCALE_OBJECT_LABELS['two-points'];
    case 'rectangle':
      return SCALE_OBJECT_LABELS[marks.object];
    case 'coin':
      return COIN_LABELS[marks.coin];
    case 'rule-ticks':
      return 'The ticks of a rule';
    case 'points':
      return marks.object === 'scale-card' ? 'The Exuviary scale card' : 'A card with printed markers';
  }
}

/** Beside every ± that can be typed. */
export const PLUS_MINUS_MEANS = 'Every ± is an expanded uncertainty, k = 2: in about 95 of 100 cases the true figure lies within it.';
