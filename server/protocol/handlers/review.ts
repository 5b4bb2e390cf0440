// What has changed in an open recipe since an old state of it, whose texts the client brings: it alone can ask the editor's git.

import { nameOfFile } from '../../recipe/use.ts';
import { review, type Side } from '../../reports/diff/review.ts';
import { reviewText } from '../../reports/diff/text.ts';
import { Workspace } from '../../workspace/workspace.ts';
import { asked } from '../guard.ts';
import { type ReviewParams, type ReviewResult, reviewRequest } from '../requests.ts';
import type { Session } from '../session.ts';

export function handleReview(session: Session): void {
  session.connection.onRequest<ReviewResult, never>(
    reviewRequest,
    asked<ReviewParams, ReviewResult>(
      session,
      'comparing',
      () => ({ kind: 'unknown' }),
      params => answer(session, params),
    ),
  );
}

function answer({ workspace }: Session, { uri, before, texts }: ReviewParams): ReviewResult {
  const snapshot = workspace.snapshot(uri);
  if (snapshot === undefined) return { kind: 'unknown' };
  const old = new Workspace();
  for (const { uri: file, text } of texts) {
    if (text === null) old.arrived(file, { kind: 'none', why: 'absent' });
    else old.open(file, text);
  }
  const wants = old.wanted();
  if (wants.length > 0) return { kind: 'wants', uris: wants };
  const was = old.snapshot(uri);
  const file = nameOfFile(uri);
  const then: Side =
    was === undefined
      ? { kind: 'absent' }
      : { kind: 'recipe', file, snapshot: was, nameFile: one => `${nameOfFile(one)} in ${before}` };
  const now: Side = { kind: 'recipe', file, snapshot, nameFile: nameOfFile };
  return { kind: 'review', text: reviewText(review(before, 'now', [{ before: then, after: now }])) };
}
