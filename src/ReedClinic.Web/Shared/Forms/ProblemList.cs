using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Web.Shared.Forms;

/// <summary>What was wrong with a form, so that each field can show its own beside itself.</summary>
/// <param name="All">Every problem, in the order of the form.</param>
public sealed record ProblemList(IReadOnlyList<Problem> All)
{
    /// <summary>Nothing was wrong.</summary>
    public static readonly ProblemList None = new([]);

    /// <summary>Problems as an operation named them, with the prefix that the form's fields have.</summary>
    /// <param name="prefix">Such as <c>Form</c>.</param>
    /// <param name="problems">What the operation refused.</param>
    /// <returns>The same problems beside the form's own fields.</returns>
    public static ProblemList Under(string prefix, IEnumerable<Problem> problems) =>
        new([.. problems.Select(p => p.Field.Length == 0 ? p : p with { Field = $"{prefix}.{p.Field}" })]);

    /// <summary>True when something was.</summary>
    public bool Any => All.Count > 0;

    /// <summary>The problem of one field, or null.</summary>
    /// <param name="field">The field's name as the form spells it.</param>
    /// <returns>One sentence, or null.</returns>
    public string? For(string field)
    {
        foreach (var problem in All)
        {
            if (problem.Field == field)
            {
                return problem.Message;
            }
        }

        return null;
    }

    /// <summary>The element that a field's problem links to.</summary>
    /// <param name="field">The field's name.</param>
    /// <returns>An id without dots or brackets.</returns>
    public static string IdOf(string field) => "f-" + field.Replace('.', '-').Replace('[', '-').Replace("]", "", StringComparison.Ordinal);
}
