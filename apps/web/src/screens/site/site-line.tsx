import type { SiteChange, SiteEntry } from '@coveline/project';
import { useRef } from 'react';
import { Button } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { SiteFields } from './site-fields.tsx';
import { siteName, siteNumbers } from './site-words.ts';

interface Props {
  readonly entry: SiteEntry;
  readonly isOpen: boolean;
  readonly onChange: (change: SiteChange | null) => void;
}

/** One thing of the site: what it is, how sure it is and why, and what can be said of it. */
export function SiteLine({ entry, isOpen, onChange }: Props) {
  const article = useRef<HTMLElement>(null);
  const { item, standing, confidence, holds, reason } = entry;
  const name = siteName(entry);
  const words = m.site.standings[standing];
  // The buttons change with what is said: the focus stays at the thing, not on a button that is gone.
  const say = (change: SiteChange | null) => {
    onChange(change);
    article.current?.focus();
  };
  return (
    <article
      ref={article}
      tabIndex={-1}
      className={`site-line ${holds ? '' : 'site-waits'}`}
      aria-label={name}
    >
      <div>
        <h3>{name}</h3>
        <p className="soft">
          {confidence === null ? words : m.site.standing(m.site.confidence[confidence], words)}
          {standing === 'proposed' && !holds ? ` · ${m.site.waits}` : ''}
        </p>
        <p>{reason}</p>
        <p className="figure soft">{siteNumbers(item)}</p>
      </div>
      <p className="site-does">
        {standing === 'proposed' ? (
          <>
            <Button
              className="outlined"
              aria-label={m.site.acceptNamed(name)}
              onPress={() => say({ do: 'accept' })}
            >
              {m.site.accept}
            </Button>
            <Button
              className="quiet"
              aria-label={m.site.leaveOutNamed(name)}
              onPress={() => say({ do: 'remove' })}
            >
              {m.site.leaveOut}
            </Button>
          </>
        ) : null}
        {standing === 'added' ? (
          <Button className="quiet" aria-label={m.site.dropNamed(name)} onPress={() => onChange(null)}>
            {m.site.drop}
          </Button>
        ) : null}
        {standing === 'accepted' || standing === 'changed' || standing === 'removed' ? (
          <Button className="quiet" aria-label={m.site.restoreNamed(name)} onPress={() => say(null)}>
            {m.site.restore}
          </Button>
        ) : null}
      </p>
      {standing === 'removed' ? null : (
        <details className="site-more" open={isOpen}>
          <summary>{m.site.numbers}</summary>
          <SiteFields item={item} onChange={(next) => onChange({ do: 'set', item: next })} />
        </details>
      )}
    </article>
  );
}
