using System.Globalization;
using Microsoft.Extensions.Localization;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Web.Features.Intake;

/// <summary>Changing how many reeds an intake has, without throwing away what was written about one.</summary>
public static class ReedCount
{
    /// <summary>The name of the field.</summary>
    public const string Field = "HowMany";

    /// <summary>The name of the tick that says: leave out what was written.</summary>
    public const string LeaveOut = "LeaveOut";

    /// <summary>Makes the form hold as many reeds as were asked for.</summary>
    /// <param name="form">The form.</param>
    /// <param name="typed">What was chosen.</param>
    /// <param name="leaveOut">True when what was written may be dropped.</param>
    /// <param name="text">The words.</param>
    /// <returns>A problem, or null when it was done.</returns>
    public static Problem? Apply(IntakeForm form, string? typed, bool leaveOut, IStringLocalizer<IntakeText> text)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (!int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count is < 1 or > Batch.MostReeds)
        {
            return new Problem(Field, text["HowManyOdd", Batch.MostReeds]);
        }

        if (!leaveOut && form.Reeds.Skip(count).Any(IsWritten))
        {
            return new Problem(LeaveOut, text["HowManyWritten", count + 1]);
        }

        while (form.Reeds.Count < count)
        {
            form.Reeds.Add(new ReedForm());
        }

        while (form.Reeds.Count > count)
        {
            form.Reeds.RemoveAt(form.Reeds.Count - 1);
        }

        return null;
    }

    private static bool IsWritten(ReedForm reed) => typeof(ReedForm).GetProperties()
        .Any(p => p.GetValue(reed) is string { Length: > 0 } words && !string.IsNullOrWhiteSpace(words));
}
