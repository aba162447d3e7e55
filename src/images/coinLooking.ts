import { type CoinProposal, proposeCoins } from '../domain/finding/coin/proposeCoins.ts';
import type { LightPlanes } from '../domain/finding/light.ts';
import { answerQuestions } from './answeringThread.ts';

/** Coins take as long to look for as everything straight together: a thread of their own does it meanwhile. */
answerQuestions<LightPlanes, readonly CoinProposal[]>(proposeCoins);
