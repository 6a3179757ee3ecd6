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

    /// <summary>What is chosen; null where nobody chose yet.</summary>
    /// <param name="form">The form.</param>
    /// <returns>A number as it was chosen, however odd.</returns>
    public static string? Chosen(IntakeForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return form.HowMany ?? (form.Reeds.Count > 1 || form.Reeds.Any(IsWritten) ? form.Reeds.Count.ToString(CultureInfo.InvariantCulture) : null);
    }

    /// <summary>What is wrong with the number that is chosen, if anything.</summary>
    /// <param name="form">The form.</param>
    /// <param name="text">The words.</param>
    /// <returns>A problem, or null.</returns>
    public static Problem? Check(IntakeForm form, IStringLocalizer<IntakeText> text)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(text);
        return Number(form) is not { } count
            ? new Problem(Field, text["HowManyOdd", Batch.MostReeds])
            : form.Reeds.Skip(count).Any(IsWritten) ? new Problem(LeaveOut, text["HowManyWritten", count + 1]) : null;
    }

    /// <summary>Makes the form hold as many reeds as were chosen, as far as that is a number and nothing written is lost by it.</summary>
    /// <param name="form">The form.</param>
    /// <param name="leaveOut">True when what was written may be dropped.</param>
    public static void Apply(IntakeForm form, bool leaveOut)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (Number(form) is not { } count || (!leaveOut && form.Reeds.Skip(count).Any(IsWritten)))
        {
            return;
        }

        while (form.Reeds.Count < count)
        {
            form.Reeds.Add(new ReedForm());
        }

        while (form.Reeds.Count > count)
        {
            form.Reeds.RemoveAt(form.Reeds.Count - 1);
        }
    }

    /// <summary>True when something was said about a reed.</summary>
    /// <param name="reed">The reed.</param>
    public static bool IsWritten(ReedForm reed) => typeof(ReedForm).GetProperties()
        .Any(p => p.GetValue(reed) is string words && !string.IsNullOrWhiteSpace(words));

    private static int? Number(IntakeForm form) =>
        int.TryParse(Chosen(form), NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= 1 and <= Batch.MostReeds ? count : null;
}
