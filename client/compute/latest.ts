/** Asks a slow answerer about the newest question only: questions overtaken while it was busy are answered `null`. */
export function latestOnly<Question, Answer>(
  ask: (question: Question) => Promise<Answer>,
): (question: Question) => Promise<Answer | null> {
  let busy = false
  let next: { question: Question; answer: (answer: Answer | null | Promise<Answer>) => void } | undefined
  const proceed = async (): Promise<void> => {
    if (busy || next === undefined) return
    const { question, answer } = next
    next = undefined
    busy = true
    const asked = ask(question)
    answer(asked)
    await asked.then(
      () => undefined,
      () => undefined,
    )
    busy = false
    void proceed()
  }
  return (question) =>
    new Promise((resolve) => {
      next?.answer(null)
      next = { question, answer: resolve }
      void proceed()
    })
}
