// What is at work, kept in the browser until the next drawing is opened: a reload loses nothing.
const store = (() => {
  const open = () => new Promise((done, failed) => {
    const asked = indexedDB.open("lapwright", 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("work");
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
  const with_it = async (how, what) => {
    const db = await open();
    return new Promise((done, failed) => {
      const asked = what(db.transaction("work", how).objectStore("work"));
      asked.onsuccess = () => { db.close(); done(asked.result); };
      asked.onerror = () => { db.close(); failed(asked.error); };
    });
  };
  return {
    keep: (work) => with_it("readwrite", (s) => s.put(work, "now")).catch(() => false),
    kept: () => with_it("readonly", (s) => s.get("now")).catch(() => undefined),
  };
})();
