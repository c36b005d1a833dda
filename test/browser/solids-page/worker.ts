import wasmUrl from 'manifold-3d/manifold.wasm?url';
import { openSolids } from '../../../src/adaptors/solids-manifold.ts';
import { HOLED_BOARD } from './holed-board.ts';

const solids = await openSolids({ wasmUrl });
postMessage(solids.within(() => String(solids.make(HOLED_BOARD).volume())));
