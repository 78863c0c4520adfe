import type { AnchorHTMLAttributes, MouseEvent } from 'react';
import { href, type Route } from './route.ts';
import { go } from './use-route.ts';

interface Props extends Omit<AnchorHTMLAttributes<HTMLAnchorElement>, 'href'> {
  readonly to: Route;
}

/** A real link: opens in place on a plain click, and in a new tab as any link does. */
export function Link({ to, onClick, ...rest }: Props) {
  const follow = (event: MouseEvent<HTMLAnchorElement>) => {
    onClick?.(event);
    if (event.defaultPrevented || event.button !== 0) return;
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    go(to);
  };
  return <a href={href(to)} onClick={follow} {...rest} />;
}
