import fc from 'fast-check';

type Field = Readonly<Record<string, unknown>>;

/** A base of each form: mostly a frame. */
export function bases(text: (from: number, to: number) => fc.Arbitrary<string>): fc.Arbitrary<Field> {
  const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });
  const board = fc.constant('other');
  return fc.oneof(
    {
      weight: 4,
      arbitrary: fc.record({
        board,
        height: text(60, 150),
        setback: text(20, 50),
        setbackBack: maybe(text(0, 50)),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.record({
        form: fc.constant('toe-kick'),
        board,
        height: text(70, 140),
        setback: text(30, 70),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.record({
        form: fc.constant('legs'),
        board,
        strip: fc.constant('leg'),
        height: text(120, 200),
        apron: maybe(text(95, 120)),
        setback: text(25, 38),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.record({
        form: fc.constant('feet'),
        strip: fc.constant('foot'),
        setback: text(36, 44),
        setbackBack: maybe(text(40, 52)),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.record({
        form: fc.constant('levellers'),
        height: maybe(text(30, 56)),
        setback: maybe(text(35, 50)),
        setbackBack: maybe(text(35, 50)),
      }),
    },
  );
}
