import { useSyncExternalStore } from 'react';

/** One value that is replaced as a whole, and those who want to know. */
export class Store<T> {
  private value: T;
  private readonly listeners = new Set<() => void>();

  constructor(value: T) {
    this.value = value;
  }

  readonly get = (): T => this.value;

  readonly set = (change: Partial<T>): void => {
    this.value = { ...this.value, ...change };
    for (const l of this.listeners) l();
  };

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
}

/** What a component needs of a store; it renders again only when that changes. */
export function useStore<T, P>(store: Store<T>, pick: (value: T) => P): P {
  return useSyncExternalStore(store.subscribe, () => pick(store.get()));
}
