import { describe, expect, test } from 'vitest';
import type { RectangleScale, RuleTicksScale } from '../../../../src/domain/measuring/calibration.ts';
import {
  areInOnePlace,
  coinDoubtInWords,
  comparisonInWords,
  confidenceInWords,
  contradictionInWords,
  directionInWords,
  displacedInWords,
  evidenceInWords,
  namesApart,
  ticksSpanInWords,
} from '../../../../src/renderer/pages/bench/scale/findingWords.ts';

const SIDE = { support: 0.9, residualPx: 0.1 };

import { uprightCard } from '../../../support/uprightCard.ts';

function ruleOfTicks(count: number): RuleTicksScale {
  const at = (number: number, yPx: number) => ({ xPx: 100 + 8 * number, yPx });
  return {
    kind: 'rule-ticks',
    ends: [at(0, 0), at(count - 1, 0)],
    graduationMm: 1,
    spanStandardUncertaintyMm: 0,
    ticks: Array.from({ length: count }, (_, number) => ({ number, from: at(number, 0), to: at(number, 20) })),
    tickPx: 0.1,
    heightMm: 0,
  };
}

describe('what was found, in words', () => {
  test('says which edge was not seen and what is lost by that', () => {
    const words = evidenceInWords({
      evidence: { kind: 'sides', sides: [SIDE, null, SIDE, SIDE], lost: ['shape-unchecked', 'leans-on-focal-length'] },
    });
    expect(words).toContain('The edge 2 to 3 was not seen');
    expect(words).toContain('What is lost');
    expect(evidenceInWords({ evidence: { kind: 'sides', sides: [SIDE, SIDE, SIDE, SIDE], lost: [] } })).not.toContain('lost');
  });

  test('counts ticks that were used and left out', () => {
    const evidence = { kind: 'ticks', found: 79, missing: [4, 5], scatterPx: 0.04, graduationAssumed: false } as const;
    const words = evidenceInWords({ evidence: { ...evidence, missing: [...evidence.missing] } });
    expect(words).toBe('79 ticks used, off a straight row by 0.04 px. 2 ticks between them worn or covered and left out.');
  });

  test('tells confidence by words alone: a figure reads as a probability', () => {
    expect(confidenceInWords({ confidence: 0.93 })).toBe('clearly seen');
    expect(confidenceInWords({ confidence: 0.2 })).toBe('uncertain: compare it with the photo');
    // Round things that are no coins reach a half.
    expect(confidenceInWords({ confidence: 0.6 })).toBe('uncertain: compare it with the photo');
    expect(confidenceInWords({ confidence: 0.7 })).toBe('seen fairly well');
  });

  test('asks about a diameter by what it makes of the picture', () => {
    expect(coinDoubtInWords(1000, { code: 'camera-height', heightMm: 16_420 })).toBe(
      'Can that be? With a diameter of 1000 mm the camera would have been 16 m above the coin. Check the figure, and that it is in millimeters.',
    );
    expect(coinDoubtInWords(0.5, { code: 'camera-height', heightMm: 8.2 })).toContain('0.82 cm above the coin');
    expect(coinDoubtInWords(0.5, { code: 'picture-length', longerSideMm: 4 })).toContain(
      'the longer side of the picture would show 0.4 cm',
    );
  });

  test('says when a rim may be that of wall or shadow, and when part of it lies outside', () => {
    const rim = {
      kind: 'rim',
      coverage: 1,
      visible: 1,
      agreement: 1,
      residualPx: 0.1,
      settled: true,
      coinAssumed: false,
      coins: [],
    } as const;
    const words = (change: object) => evidenceInWords({ evidence: { ...rim, coins: [], ...change } });
    expect(words({})).not.toMatch(/wall|outside/);
    expect(words({ settled: false })).toContain('wall and shadow could not be told apart');
    expect(words({ visible: 0.66 })).toContain('34 % of it lies outside of the picture');
  });

  test('say how long the ticks run by the unit they are taken for, so that the numbers on the rule can contradict it', () => {
    const rule = ruleOfTicks(151);
    expect(ticksSpanInWords(rule)).toBe('From the first tick to the last it would be 150.0 mm: do the numbers on the rule say so?');
    // 150 sixteenths of an inch of 25.4 mm.
    expect(ticksSpanInWords({ ...rule, graduationMm: 25.4 / 16 })).toContain('238.1 mm (9.38 in)');
  });

  test('call a check weak that leaves more than a tenth of the length open', () => {
    const weak = comparisonInWords({ itselfMm: 100, byOtherMm: 198, expandedUncertaintyMm: 193 });
    expect(weak).toContain('too weak to tell');
    expect(weak).not.toContain('Both agree');
    expect(comparisonInWords({ itselfMm: 24.26, byOtherMm: 24.31, expandedUncertaintyMm: 0.4 })).toMatch(/^Both agree\./);
  });

  test('names directions as the picture shows them: y runs down', () => {
    expect([0, 1, 2, 3, -1].map((quarters) => directionInWords((quarters * Math.PI) / 2))).toEqual([
      'right',
      'lower',
      'left',
      'upper',
      'upper',
    ]);
    expect(directionInWords((-3 * Math.PI) / 4)).toBe('upper left');
  });

  test('says of two objects what each makes of the other', () => {
    const coin = {
      kind: 'coin',
      coin: 'us-dime',
      rim: { centre: { xPx: 1, yPx: 1 }, semiMajorPx: 9, semiMinorPx: 8, angleRad: 0 },
      rimPx: 0.1,
      diameterMm: 17.91,
      diameterStandardUncertaintyMm: 0.03,
      thicknessMm: 1.35,
      nearEdgeRad: null,
    } as const;
    const rule = {
      kind: 'two-points',
      ends: [
        { xPx: 0, yPx: 0 },
        { xPx: 9, yPx: 0 },
      ],
      distanceMm: 10,
      distanceStandardUncertaintyMm: 0.1,
      pointingPx: 1,
      heightMm: 0,
    } as const;
    const words = contradictionInWords({ ...rule, ends: [rule.ends[0], rule.ends[1]] }, coin, {
      itselfMm: 17.91,
      byOtherMm: 23.25,
      expandedUncertaintyMm: 0.12,
    });
    expect(words).toContain('“US dime (10 cents)” would be 23.25 mm; by itself it is 17.91 mm (+29.8 %)');
  });

  describe('two cards of one name', () => {
    test('are told apart by where they lie to each other', () => {
      const sides = (one: RectangleScale, other: RectangleScale) => namesApart(one, other).map((name) => name.split(', ')[1]);
      expect(sides(uprightCard(0, 0), uprightCard(1000, 300))).toEqual(['the left one', 'the right one']);
      expect(sides(uprightCard(1000, 300), uprightCard(0, 0))).toEqual(['the right one', 'the left one']);
      expect(sides(uprightCard(0, 0), uprightCard(100, 900))).toEqual(['the upper one', 'the lower one']);
      expect(sides(uprightCard(100, 900), uprightCard(0, 0))).toEqual(['the lower one', 'the upper one']);
    });

    test('that are one card have handles off its edges, by so many pixels', () => {
      const contradiction = { itselfMm: 101.2, byOtherMm: 103.7, expandedUncertaintyMm: 0.4 };
      expect(displacedInWords(uprightCard(30, 40), uprightCard(0, 0), contradiction)).toContain(
        'one handle is 50 px away from where they meet. By the handles as they lie the card would be 103.7 mm from corner to corner instead of 101.2 mm (+2.5 %)',
      );
    });
  });
});

test('a sheet marked on the corners of a bank card is one object taken for two; a card that lies within a sheet is another one', () => {
  const at = (xPx: number, yPx: number) => ({ xPx, yPx });
  const sheetAt = (leftPx: number, sidePx: number): RectangleScale =>
    uprightCard(0, 0, {
      object: 'a4',
      corners: [at(leftPx, 95), at(leftPx + sidePx, 95), at(leftPx + sidePx, 95 + 0.63 * sidePx), at(leftPx, 95 + 0.63 * sidePx)],
    });
  expect(areInOnePlace(sheetAt(105, 850), uprightCard(100, 100))).toBe(true);
  expect(areInOnePlace(sheetAt(100, 2400), uprightCard(300, 300))).toBe(false);
  expect(areInOnePlace(uprightCard(100, 100), ruleOfTicks(30))).toBe(false);
});
