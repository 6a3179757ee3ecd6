namespace ReedClinic.Domain.Letters;

/// <summary>What is spoken of twice in one sentence is named once: “the low notes were late, and after the work they spoke at once”.</summary>
internal static class Again
{
    private static readonly (string Subject, string Pronoun)[] Subjects =
    [
        ("the low notes ", "they "), ("the high notes ", "they "), ("tongued notes ", "they "), ("the opening ", "it "), ("the tuning note ", "it "),
        ("its crow ", "it "), ("a long note ", "it "), ("the sound ", "it "), ("its blades ", "they "),
    ];

    /// <summary>The second of two clauses.</summary>
    /// <param name="before">The first; null for none.</param>
    /// <param name="clause">The second.</param>
    internal static string Of(string? before, string clause)
    {
        var (subject, pronoun) = Array.Find(Subjects, one => before?.StartsWith(one.Subject, StringComparison.Ordinal) == true && clause.StartsWith(one.Subject, StringComparison.Ordinal));
        return subject is null ? clause : pronoun + clause[subject.Length..];
    }
}
