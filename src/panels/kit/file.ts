/** Hands a text to the person as a file; nothing leaves the device by it. */
export function saveFile(name: string, type: string, content: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the blob after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
