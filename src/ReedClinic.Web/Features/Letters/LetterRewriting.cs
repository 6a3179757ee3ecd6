using System.Globalization;
using Microsoft.Extensions.Localization;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Letters;

/// <summary>A part that was written anew just now.</summary>
/// <param name="Key">The part.</param>
/// <param name="What">What was done.</param>
/// <param name="From">The version in which it still stands as before.</param>
public sealed record LetterRewritten(string Key, string What, int From);

/// <summary>Writes one part of a letter anew when its button was pressed, after everything else that was typed is kept.</summary>
public sealed class LetterRewriting(LetterBook letters, IStringLocalizer<LetterText> words, TimeProvider time)
{
    /// <summary>Written as the log says it now.</summary>
    public const string DoneAfresh = "afresh";

    /// <summary>Said in other words.</summary>
    public const string DoneOther = "other";

    /// <summary>As it stood before.</summary>
    public const string DoneBack = "back";

    private const string Field = "Anew";

    /// <summary>What the button says that writes a part as the log says it.</summary>
    /// <param name="key">The part.</param>
    public static string Afresh(string key) => $"{DoneAfresh}:0:{key}";

    /// <summary>What the button says that asks for other words.</summary>
    /// <param name="key">The part.</param>
    public static string Other(string key) => $"{DoneOther}:0:{key}";

    /// <summary>What the button says that takes one of these back.</summary>
    /// <param name="key">The part.</param>
    /// <param name="from">The version in which it still stood as before.</param>
    public static string Back(string key, int from) => string.Create(CultureInfo.InvariantCulture, $"{DoneBack}:{from}:{key}");

    /// <summary>Which part is to be written anew, and how; null when no such button was pressed.</summary>
    /// <param name="posted">The form.</param>
    public static LetterRewritten? Asked(LetterPost posted)
    {
        ArgumentNullException.ThrowIfNull(posted);
        return posted[Field]?.Split(':', 3) is [DoneAfresh or DoneOther or DoneBack, var from, { Length: > 0 } key]
            && int.TryParse(from, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                ? new(key, posted[Field]!.Split(':')[0], number)
                : null;
    }

    /// <summary>Writes it anew.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="view">The letter as it stands, with what was typed beside.</param>
    /// <param name="version">The version that was looked at.</param>
    /// <param name="posted">The form.</param>
    /// <param name="asked">Which part, and how.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>Where to go on, or why it stays.</returns>
    public async Task<(string? LeadsTo, IReadOnlyList<Problem> Problems)> RewriteAsync(
        Actor actor, LetterView view, Guid version, LetterPost posted, LetterRewritten asked, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(posted);
        ArgumentNullException.ThrowIfNull(asked);
        PartWish wish = asked.What switch
        {
            DoneOther => new PartWish.OtherWords(),
            DoneBack => new PartWish.AsIn(asked.From),
            _ => new PartWish.Afresh(),
        };
        var code = view.AtBench.Batch.Code;
        return await letters.RewriteAsync(actor, code, asked.Key, wish, version, posted.OperationFor(Field, posted[Field]!), ct).ConfigureAwait(false) switch
        {
            Outcome<LetterView>.Done(var now) => (Next(code.ToString(), asked, now.Versions[0].Number - 1), []),
            Outcome<LetterView>.Refused(var refused) => (null, [.. refused.Select(problem => problem with { Field = posted.FieldOf(problem.Field) })]),
            Outcome<LetterView>.Conflict(var now) => (null, [new Problem("", words.Clash(now, time))]),
            _ => (null, [new Problem("", words["Gone"])]),
        };
    }

    private static string Next(string code, LetterRewritten asked, int before) =>
        string.Create(CultureInfo.InvariantCulture, $"/batches/{code}/letter?done={asked.What}&part={Uri.EscapeDataString(asked.Key)}&from={before}");
}
