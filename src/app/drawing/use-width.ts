import { type RefObject, useLayoutEffect, useState } from 'react';

/** How wide an element is, in pixels, kept up to date; 0 before it is there. */
export function useWidth(of: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = of.current;
    if (!element) return;
    setWidth(element.clientWidth);
    const watch = new ResizeObserver(() => setWidth(element.clientWidth));
    watch.observe(element);
    return () => watch.disconnect();
  }, [of]);
  return width;
}
