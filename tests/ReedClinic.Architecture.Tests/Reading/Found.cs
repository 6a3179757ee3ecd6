namespace ReedClinic.Architecture.Tests.Reading;

/// <summary>How a rule's findings are asserted: a real tree has none, a planted one has exactly what was planted.</summary>
public static class Found
{
    public static void None(IEnumerable<string> violations)
    {
        var list = violations.ToList();
        Assert.True(list.Count == 0, $"{list.Count} violation(s):\n{string.Join('\n', list)}");
    }

    public static void One(IEnumerable<string> violations, string naming) =>
        Assert.Contains(naming, Assert.Single(violations), StringComparison.Ordinal);
}
