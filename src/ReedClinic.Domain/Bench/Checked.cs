using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>Gives an entry when nothing is wrong with it.</summary>
internal static class Checked
{
    internal static Outcome<T> Give<T>(List<Problem> problems, Func<T> make) => problems.Count > 0
        ? new Outcome<T>.Refused(problems)
        : new Outcome<T>.Done(make());

    internal static IEnumerable<Problem> Known<T>(string field, T value, string message)
        where T : struct, Enum => Enum.IsDefined(value) ? [] : [new Problem(field, message)];
}
