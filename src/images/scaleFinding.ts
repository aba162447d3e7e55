import process from 'node:process';
import type { CoinProposal } from '../domain/finding/coin/proposeCoins.ts';
import type { FoundScale, ScaleProposal } from '../domain/finding/foundScale.ts';
import { judgedPicture } from '../domain/finding/judged.ts';
import type { LightPlanes } from '../domain/finding/light.ts';
import { proposalsFrom, straightIn } from '../domain/finding/lookRound.ts';
import { factorFor, refineScale } from '../domain/finding/refine.ts';
import type { RoughScale } from '../domain/finding/refinement.ts';
import { enlargedProposal } from '../domain/finding/scaleMarks.ts';
import type { PictureFacts } from '../domain/measuring/camera.ts';
import { type Result, succeed } from '../domain/result.ts';
import { openThread } from './askedThread.ts';
import { openFiducialDetector } from './fiducials.ts';
import { readLight } from './light.ts';
import type { PictureFile } from './pictureFile.ts';

/** A picture on disk, and what its record says of it. */
export interface FindingPicture {
  readonly file: PictureFile;
  readonly facts: PictureFacts;
}

/** `rough` null: whatever there is. */
export interface FindingQuestion {
  readonly ticket: number;
  readonly picture: FindingPicture;
  readonly rough: RoughScale | null;
}

export type FindingAnswer =
  | { readonly ticket: number; readonly proposals: Result<readonly ScaleProposal[]> }
  | { readonly ticket: number; readonly refined: Result<FoundScale> }
  | { readonly ticket: number; readonly reason: string };

/** Pictures beyond this are worked on at half their size or less: four planes of floats take 16 bytes a pixel. */
const LARGEST_WORKING_PX = 64_000_000;

const detector = openFiducialDetector();
const coinLooker = openThread<LightPlanes, readonly CoinProposal[]>('coinLooking', 'search for coins');

async function answerTo({ ticket, picture, rough }: FindingQuestion): Promise<FindingAnswer> {
  try {
    if (rough === null) return { ticket, proposals: await lookRound(picture) };
    return { ticket, refined: await refine(picture, rough) };
  } catch (error) {
    return { ticket, reason: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

function leastFactor({ widthPx, heightPx }: PictureFacts): number {
  return Math.ceil(Math.sqrt((widthPx * heightPx) / LARGEST_WORKING_PX));
}

async function lookRound({ file, facts }: FindingPicture): Promise<Result<readonly ScaleProposal[]>> {
  const light = await readLight(file, leastFactor(facts));
  if (!light.ok) return light;
  const judged = judgedPicture(light.value.image, light.value.colors);
  // Markers and coins are looked for in threads of their own meanwhile.
  const elsewhere = Promise.all([detector.find(light.value.image), coinLooker.ask(judged.colors)]);
  const straight = straightIn(light.value, judged, facts);
  const [markers, coins] = await elsewhere;
  const proposals = proposalsFrom(light.value, { markers, straight, coins }, judged.factor, facts);
  return succeed(proposals.map((proposal) => enlargedProposal(proposal, light.value.factor)));
}

async function refine({ file, facts }: FindingPicture, rough: RoughScale): Promise<Result<FoundScale>> {
  const light = await readLight(file, Math.max(factorFor(rough), leastFactor(facts)));
  return light.ok ? refineScale(light.value, rough, facts) : light;
}

process.on('message', async (question: FindingQuestion) => {
  const answer = await answerTo(question);
  // Whoever asked may be gone: then nobody needs the answer.
  if (process.connected) process.send?.(answer);
});
// The program that asks has ended, however it did.
process.once('disconnect', () => process.exit());
