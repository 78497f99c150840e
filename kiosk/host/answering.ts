/** Whatever hears and answers: fetched as a part of its own, while the first screen is drawn already. */
export { likelyReplies } from '../../core/respond/likely.ts';
export { wouldDo } from '../../core/respond/wouldDo.ts';
export { respond } from '../../core/respond/respond.ts';
export { dependsOn } from '../../core/talk/dependence.ts';
export { phrasesFor } from '../../core/talk/grammar.ts';
export { parseRequest } from '../../core/talk/parse.ts';
export { parseHeard } from '../../core/talk/doubt.ts';
export { groundsOf } from '../../core/talk/strict/follows.ts';
export { sentencesFor } from '../../core/talk/strict/sentences.ts';
