/** A paragraph of the notes beside the drawing: a heading and sentences with places to write on. */
export function Note({ title, children }: { title: string; children: React.ReactNode }) {
  return (
    <section className="note">
      <h2>{title}</h2>
      {children}
    </section>
  );
}
