namespace ReedClinic.Domain.Letters;

/// <summary>In which reeds something was seen, to stand inside a sentence.</summary>
internal static class SeenIn
{
    /// <summary>“in all three reeds”, out of a sentence of evidence; null where it says nothing of the kind.</summary>
    /// <param name="evidence">The sentence, such as “In all three reeds.”.</param>
    /// <param name="numbers">The numbers of the reeds that have it: a letter names them, so that no count of it can say something else.</param>
    /// <param name="all">How many reeds there are.</param>
    public static string? Reeds(string? evidence, IReadOnlyCollection<int> numbers, int all)
    {
        if (evidence?.StartsWith("In ", StringComparison.Ordinal) != true || evidence.Contains(';', StringComparison.Ordinal))
        {
            return null;
        }

        var said = Prose.Inside(evidence).TrimEnd('.').Replace("in the one reed of this batch", "in this reed", StringComparison.Ordinal);
        return numbers.Count == 0 ? said : Reeds(numbers, all) ?? said;
    }

    /// <summary>“in reeds one and three”, “in all of them”; null where there is only one reed to speak of.</summary>
    /// <param name="numbers">The numbers of the reeds that have it.</param>
    /// <param name="all">How many reeds there are.</param>
    public static string? Reeds(IReadOnlyCollection<int> numbers, int all) => (numbers.Count, all) switch
    {
        (_, 1) => null,
        (2, 2) => "in both reeds",
        var (some, every) when some == every => $"in all {Prose.Number(every)} reeds",
        (1, _) => "in reed " + Prose.Number(numbers.First()),
        _ => "in reeds " + Prose.List([.. numbers.Order().Select(Prose.Number)]),
    };
}
