/** The page before any callout is open: what this is, and the caution that every first visit shows. */
export function App() {
  return (
    <main>
      <h1>Coldbench</h1>
      <p>A practice bench for finding faults in refrigeration, air-conditioning and heat-pump systems.</p>
      <p>
        Refrigerant work, electricity, pressure and rotating parts can injure or kill. Coldbench trains reasoning; it is
        not a service manual and does not authorise work. Local codes, the equipment maker's instructions and licensed
        practice come first.
      </p>
    </main>
  );
}
