using System.Globalization;
using System.Linq.Expressions;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Web.Features.Intake;

/// <summary>One field of one screen, by the name that the form, the reader's problems and the draft all use.</summary>
/// <param name="Name">Such as <c>Reeds[0].Bothers</c>.</param>
/// <param name="Owner">What it is written to.</param>
/// <param name="Property">Where it is kept.</param>
public sealed record StepField(string Name, object Owner, PropertyInfo Property)
{
    /// <summary>What stands in it.</summary>
    public string? Value
    {
        get => (string?)Property.GetValue(Owner);
        set => Property.SetValue(Owner, value);
    }
}

/// <summary>Which fields stand on which screen.</summary>
public static class StepFields
{
    // The words, and the three scales that everybody sees.
    private const int AskedFirst = 4;

    private static readonly Dictionary<string, PropertyInfo[]> OfForm = new()
    {
        [IntakePath.Instrument] = [On<IntakeForm>(f => f.Instrument)],
        [IntakePath.Tuning] = [On<IntakeForm>(f => f.TunesTo)],
        [IntakePath.Scrape] = [On<IntakeForm>(f => f.Scrape)],
        [IntakePath.Country] = [On<IntakeForm>(f => f.Country)],
        [IntakePath.HowMany] = [On<IntakeForm>(f => f.HowMany)],
        [IntakePath.Questions] = [On<IntakeForm>(f => f.Questions)],
    };

    private static readonly Dictionary<string, PropertyInfo[]> OfReed = new()
    {
        [IntakePath.Recognise] = [On<ReedForm>(r => r.HowToRecognise)],
        [IntakePath.Bothers] =
        [
            On<ReedForm>(r => r.Bothers), On<ReedForm>(r => r.Response), On<ReedForm>(r => r.Intonation), On<ReedForm>(r => r.Opening),
            On<ReedForm>(r => r.Effort), On<ReedForm>(r => r.Sound), On<ReedForm>(r => r.SoftPlaying), On<ReedForm>(r => r.HighNotes),
            On<ReedForm>(r => r.Tiredness), On<ReedForm>(r => r.TiedBy), On<ReedForm>(r => r.MadeHow), On<ReedForm>(r => r.HoursPlayed),
            On<ReedForm>(r => r.LastTried), On<ReedForm>(r => r.UsedFor), On<ReedForm>(r => r.Likes), On<ReedForm>(r => r.Questions),
        ],
        [IntakePath.Permission] = [On<ReedForm>(r => r.Permission)],
    };

    /// <summary>The fields of a screen, or null when this intake has no such screen.</summary>
    /// <param name="form">What was typed so far.</param>
    /// <param name="step">The screen.</param>
    /// <returns>The fields, tied to the form.</returns>
    public static IReadOnlyList<StepField>? Of(IntakeForm form, IntakeStep step)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(step);
        if (step.Reed is not { } number)
        {
            return OfForm.TryGetValue(step.Key, out var own) ? [.. own.Select(p => new StepField(p.Name, form, p))] : null;
        }

        if (number < 1 || number > form.Reeds.Count || !OfReed.TryGetValue(step.Key, out var properties))
        {
            return null;
        }

        var prefix = Prefix(number);
        return [.. properties.Select(p => new StepField(prefix + p.Name, form.Reeds[number - 1], p))];
    }

    /// <summary>The fields of the part that can be told or left out.</summary>
    /// <param name="reed">What was typed about a reed.</param>
    /// <param name="number">The number on its tag.</param>
    /// <returns>The fields, tied to the reed.</returns>
    public static IEnumerable<StepField> More(ReedForm reed, int number) => OfReed[IntakePath.Bothers].Skip(AskedFirst)
        .Select(p => new StepField(Prefix(number) + p.Name, reed, p));

    /// <summary>What stands before a reed's field names.</summary>
    /// <param name="number">The number on the tag.</param>
    /// <returns>Such as <c>Reeds[0].</c></returns>
    public static string Prefix(int number) => string.Create(CultureInfo.InvariantCulture, $"Reeds[{number - 1}].");

    /// <summary>A short mark of what stands on a screen, so that a second tab's change to it is noticed.</summary>
    /// <param name="fields">The fields of the screen.</param>
    /// <returns>The same for the same texts.</returns>
    public static string MarkOf(IEnumerable<StepField> fields)
    {
        var text = string.Join('\u001f', fields.Select(f => Plain(f.Value)));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)).AsSpan(0, 12));
    }

    /// <summary>A text as a browser would send it back: one kind of line end, nothing for null.</summary>
    /// <param name="text">A text.</param>
    /// <returns>The text.</returns>
    public static string Plain(string? text) => (text ?? "").ReplaceLineEndings("\n");

    private static PropertyInfo On<T>(Expression<Func<T, string?>> field) => (PropertyInfo)((MemberExpression)field.Body).Member;
}
