using System.Reflection;
using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.House;

/// <summary>
/// A transaction is begun in one place, by a try that waits for a database that comes back. Only that place can make a try, so
/// whoever writes in a transaction can't forget to wait.
/// </summary>
public static class TransactionRules
{
    public static IEnumerable<string> Violations(IEnumerable<Source> sources, IReadOnlyDictionary<string, string> exceptions) =>
        from file in sources
        where !exceptions.ContainsKey(file.Path)
        from at in PlacesOf(file.Text, "BeginTransaction")
        select $"{file.Path}:{file.LineOf(at)} begins a transaction by itself: have PatientlyAsync make the try, and the try begin it";

    public static IEnumerable<string> WaysToMake(Type attempt) =>
        from way in attempt.GetConstructors(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance)
        where !way.IsPrivate
        select $"{attempt.Name} can be made by others";

    private static IEnumerable<int> PlacesOf(string text, string what)
    {
        for (var at = text.IndexOf(what, StringComparison.Ordinal); at >= 0; at = text.IndexOf(what, at + what.Length, StringComparison.Ordinal))
        {
            yield return at;
        }
    }
}
