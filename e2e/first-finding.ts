import type { ReviewAnswer } from '@coveline/api';
import type { Finding } from '@coveline/review';

/** The finding that stands first on a revision, as the server tells it; without a decision that an earlier run left. */
export async function firstFinding(url: string, machine: string, revision: string): Promise<Finding> {
  const response = await fetch(`${url}/api/machines/${machine}/revisions/${revision}/review`);
  const [finding] = ((await response.json()) as ReviewAnswer).findings;
  const open = { do: 'decide', revision, finding: finding.id, decision: null };
  await fetch(`${url}/api/machines/${machine}/commands`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(open),
  });
  return finding;
}
