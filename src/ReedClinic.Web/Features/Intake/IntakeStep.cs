using System.Globalization;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Web.Features.Intake;

/// <summary>One screen of the intake, with one question on it.</summary>
/// <param name="Key">What is asked; it stands in the address.</param>
/// <param name="Reed">The number on the reed's tag, when it is about one reed.</param>
public sealed record IntakeStep(string Key, int? Reed = null)
{
    /// <summary>The last part of its address.</summary>
    public string Path => Reed is { } number ? string.Create(CultureInfo.InvariantCulture, $"reed/{number}/{Key}") : Key;

    /// <summary>Where it is.</summary>
    /// <param name="draft">The intake.</param>
    /// <returns>An address on this site.</returns>
    public string AddressIn(DraftId draft) => $"/intake/{draft.Value}/{Path}";

    /// <summary>Where it is for whoever changes one answer: from there it goes back to the look over.</summary>
    /// <param name="draft">The intake.</param>
    /// <returns>An address on this site.</returns>
    public string ChangedIn(DraftId draft) => $"{AddressIn(draft)}?from={IntakePath.LookOver}";
}

/// <summary>The order of the screens: once about the student, then each reed in turn, then questions.</summary>
public static class IntakePath
{
    /// <summary>What the batch is for.</summary>
    public const string Instrument = "instrument";

    /// <summary>What the student tunes to.</summary>
    public const string Tuning = "tuning";

    /// <summary>How the reeds are scraped.</summary>
    public const string Scrape = "scrape";

    /// <summary>Where the parcel comes from.</summary>
    public const string Country = "country";

    /// <summary>How many reeds.</summary>
    public const string HowMany = "how-many";

    /// <summary>How to tell a reed from the others.</summary>
    public const string Recognise = "recognise";

    /// <summary>What bothers its owner.</summary>
    public const string Bothers = "bothers";

    /// <summary>How far the teacher may go.</summary>
    public const string Permission = "permission";

    /// <summary>What the student wants to ask.</summary>
    public const string Questions = "questions";

    /// <summary>Where everything can be seen before it is sent.</summary>
    public const string LookOver = "look-over";

    private static readonly string[] AboutYou = [Instrument, Tuning, Scrape, Country, HowMany];

    private static readonly string[] AboutAReed = [Recognise, Bothers, Permission];

    /// <summary>Every screen of this intake before it is looked over.</summary>
    /// <param name="form">What was typed so far.</param>
    /// <returns>The screens in order.</returns>
    public static IReadOnlyList<IntakeStep> Of(IntakeForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return
        [
            .. AboutYou.Select(key => new IntakeStep(key)),
            .. Enumerable.Range(1, form.Reeds.Count).SelectMany(number => AboutAReed.Select(key => new IntakeStep(key, number))),
            new IntakeStep(Questions),
        ];
    }

    /// <summary>The screen after one; the look over after the last.</summary>
    /// <param name="form">What was typed so far.</param>
    /// <param name="step">A screen.</param>
    /// <returns>The next screen.</returns>
    public static IntakeStep After(IntakeForm form, IntakeStep step) => At(form, 1, step) ?? new IntakeStep(LookOver);

    /// <summary>Where a screen leads that was sent: whoever changes one answer doesn't go through all of them once more.</summary>
    /// <param name="draft">The intake.</param>
    /// <param name="step">The screen.</param>
    /// <param name="wrong">True when something on it can't be taken: then it is shown again.</param>
    /// <param name="isChange">True when it was opened from the look over.</param>
    /// <returns>An address on this site.</returns>
    public static string Onward(DraftView draft, IntakeStep step, bool wrong, bool isChange)
    {
        ArgumentNullException.ThrowIfNull(draft);
        ArgumentNullException.ThrowIfNull(step);
        return (wrong, isChange) switch
        {
            (true, true) => step.ChangedIn(draft.Id) + "&again=yes",
            (true, false) => step.AddressIn(draft.Id) + "?again=yes",
            (false, true) => new IntakeStep(LookOver).AddressIn(draft.Id),
            _ => After(draft.Form, step).AddressIn(draft.Id),
        };
    }

    /// <summary>The screen before one, or null at the first.</summary>
    /// <param name="form">What was typed so far.</param>
    /// <param name="step">A screen.</param>
    /// <returns>The screen before.</returns>
    public static IntakeStep? Before(IntakeForm form, IntakeStep step) =>
        step.Key == LookOver ? Of(form)[^1] : At(form, -1, step);

    /// <summary>Where somebody begins who comes for the first time, or was here before.</summary>
    /// <param name="form">What is known so far.</param>
    /// <returns>The first screen that asks something new.</returns>
    public static IntakeStep Begin(IntakeForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return new IntakeStep(string.IsNullOrWhiteSpace(form.Country) ? Instrument : HowMany);
    }

    /// <summary>Where somebody stopped: the first screen whose answer is still needed, else the look over.</summary>
    /// <param name="form">What was typed so far.</param>
    /// <returns>A screen.</returns>
    public static IntakeStep Unfinished(IntakeForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        for (var i = 0; i < form.Reeds.Count; i++)
        {
            var reed = form.Reeds[i];
            var missing = new[] { (Recognise, reed.HowToRecognise), (Bothers, reed.Bothers), (Permission, reed.Permission) }
                .FirstOrDefault(answer => string.IsNullOrWhiteSpace(answer.Item2));
            if (missing.Item1 is { } key)
            {
                var untouched = i == 0 && key == Recognise && form.Reeds.Count == 1;
                return untouched ? Begin(form) : new IntakeStep(key, i + 1);
            }
        }

        return new IntakeStep(LookOver);
    }

    /// <summary>Where somebody goes on: the page that was open last, else what is still needed.</summary>
    /// <param name="form">What was typed so far.</param>
    /// <returns>A screen.</returns>
    public static IntakeStep Stopped(IntakeForm form) =>
        Of(form).Append(new IntakeStep(LookOver)).FirstOrDefault(step => step.Path == form.StoppedAt) ?? Unfinished(form);

    /// <summary>How far a screen is along the way, in hundredths. Each part of the way has its share, so more reeds don't lead back.</summary>
    /// <param name="form">What was typed so far.</param>
    /// <param name="step">The screen.</param>
    /// <returns>From 0 to 100.</returns>
    public static int Along(IntakeForm form, IntakeStep step)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(step);
        return step switch
        {
            { Key: LookOver } => 96,
            { Key: Questions } => 90,
            { Reed: { } number } => 25 + (65 * (((number - 1) * AboutAReed.Length) + Array.IndexOf(AboutAReed, step.Key)) / (AboutAReed.Length * form.Reeds.Count)),
            _ => 5 * Array.IndexOf(AboutYou, step.Key),
        };
    }

    private static IntakeStep? At(IntakeForm form, int away, IntakeStep step)
    {
        var all = Of(form);
        for (var i = 0; i < all.Count; i++)
        {
            if (all[i] == step)
            {
                return i + away >= 0 && i + away < all.Count ? all[i + away] : null;
            }
        }

        return null;
    }
}
