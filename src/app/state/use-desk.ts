import { createContext, use } from 'react';
import type { AppState } from './app-state.ts';
import type { Desk } from './desk.ts';
import { useStore } from './store.ts';

export const DeskContext = createContext<Desk | undefined>(undefined);

export function useDesk(): Desk {
  const desk = use(DeskContext);
  if (!desk) throw new Error('there is no desk above this component');
  return desk;
}

/** A part of the state; give back values that stay the same while nothing changes. */
export function useApp<P>(pick: (state: AppState) => P): P {
  return useStore(useDesk().store, pick);
}
