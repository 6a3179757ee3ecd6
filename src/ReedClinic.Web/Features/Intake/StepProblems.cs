using Microsoft.Extensions.Localization;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Web.Features.Intake;

/// <summary>What is wrong on one screen.</summary>
public static class StepProblems
{
    /// <summary>What can't be taken there, each with its field.</summary>
    /// <param name="step">The screen.</param>
    /// <param name="form">What was typed so far.</param>
    /// <param name="fields">The fields of the screen.</param>
    /// <param name="words">The words.</param>
    public static IEnumerable<Problem> On(IntakeStep step, IntakeForm form, IReadOnlyList<StepField> fields, IStringLocalizer<IntakeText> words)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(words);
        return step.Key switch
        {
            IntakePath.HowMany => ReedCount.Check(form, words) is { } problem ? [problem] : [],
            IntakePath.Instrument when form.Instrument is null => [new Problem(nameof(IntakeForm.Instrument), words["InstrumentChoose"])],
            _ => IntakeReader.Read(form) is Outcome<AnnouncedBatch>.Refused(var problems) ? problems.Where(p => fields.Any(f => f.Name == p.Field)) : [],
        };
    }
}
