import type { Engines } from './engine-choice.js';
import type { Engine, Session } from './linear-model.js';

/**
 * Engines that start no solve once `stop` says so, and end one that is under way
 * where they can be interrupted.
 */
export function stoppable(engines: Engines, stop: () => boolean): Engines {
  return {
    small: stoppableEngine(engines.small, stop),
    large: async () => {
      const large = await engines.large();
      return large && stoppableEngine(large, stop);
    },
  };
}

function stoppableEngine(engine: Engine, stop: () => boolean): Engine {
  return { name: engine.name, open: (rows) => stoppableSession(engine.open(rows), stop) };
}

function stoppableSession(session: Session, stop: () => boolean): Session {
  return {
    addRows: (rows) => session.addRows(rows),
    add: (columns) => session.add(columns),
    setRow: (row, bound) => session.setRow(row, bound),
    setColumn: (column, lower, upper) => session.setColumn(column, lower, upper),
    solve: (limits) => (stop() ? { status: 'stopped' } : session.solve({ ...limits, stop })),
    close: () => session.close(),
  };
}
