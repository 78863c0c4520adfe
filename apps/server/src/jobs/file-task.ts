export default async function fileTask(): Promise<void> {}
