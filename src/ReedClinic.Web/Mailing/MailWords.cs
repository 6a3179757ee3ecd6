using System.Text.RegularExpressions;
using Microsoft.Extensions.Localization;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Web.Shared;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Mailing;

/// <summary>
/// Finds the words for a mail. It says what it is for, until when, and what to do if it wasn't you; of a person only the
/// first word of their name, or all of it where that word is a title; of a batch only its code.
/// </summary>
/// <param name="words">The words.</param>
/// <param name="post">Writes links.</param>
/// <param name="time">The clock, for the studio's own time.</param>
public sealed partial class MailWords(IStringLocalizer<MailText> words, MailPost post, TimeProvider time)
{
    private const int LongestFirstName = 30;
    private const int LongestGreeting = 80;

    /// <summary>The words of a mail.</summary>
    /// <param name="mail">The mail.</param>
    /// <param name="studio">What the studio is called.</param>
    /// <param name="brings">Whether the letter goes along as a PDF.</param>
    public MailSheet For(Mail mail, string studio, bool brings = false)
    {
        ArgumentNullException.ThrowIfNull(mail);
        var (kind, key) = (mail.Kind, KeyOf(mail));
        var code = CodeIn(mail.Path);
        if (kind == MailKind.Unfit)
        {
            return Unfit(mail, studio, code ?? "");
        }

        var about = code is null ? words[$"{key}Subject", studio].Value : words[NewsKey(mail) + "Subject", code].Value;
        var why = (kind, code) switch
        {
            (MailKind.Notice, _) => NoticeOf(mail.What),
            (_, not null) when mail is { What: Mail.Corrected, Secret: not null } => words["CorrectedByLinkWhy", studio, code].Value,
            (_, not null) => words[NewsKey(mail) + "Why", studio, code].Value,
            _ => words[$"{key}Why", studio, mail.At is { } at ? Day(at) : "", FirstName(mail.Ward) ?? words["SomeStudent"].Value].Value,
        };
        var when = kind == MailKind.Notice && mail.At is { } then ? words["When", Moment(then)].Value : null;
        var along = brings ? words["BringsLetter"].Value : null;
        var path = MailPaths.Of(mail);
        return new MailSheet(
            about,
            Greeting(mail),
            [.. new[] { why, when }.OfType<string>(), .. Next(mail, key, studio), .. new[] { along }.OfType<string>()],
            path is null ? null : PostsReeds(mail) ? words["NewsOfBatchLink"].Value : words[$"{key}Link"].Value,
            path is null ? null : post.Link(path),
            [.. Until(mail), words[$"{key}NotYou"]],
            studio,
            words[FootOf(mail, brings), studio]);
    }

    /// <summary>How somebody is greeted: by the first word of their name, and by all of it as they typed it where that word is a title; null for no name.</summary>
    /// <param name="name">The whole name.</param>
    public static string? Greeted(string? name)
    {
        var typed = (name ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var titles = typed.TakeWhile(word => Title().IsMatch(word)).Count();
        var rest = typed[titles..];
        return titles == 0 ? FirstName(name)
            : rest.Length > 0 && name!.Length <= LongestGreeting && rest.All(word => Initial().IsMatch(word) || FirstName(word) is not null) ? string.Join(' ', typed)
            : null;
    }

    // What can be done next; of a yes by what it found waiting.
    private IEnumerable<string> Next(Mail mail, string key, string studio) => (key, mail) switch
    {
        ("ConsentGivenToStudent", { KeptApart: > 0 }) =>
            [.. Next(mail with { KeptApart = 0, Unsent = false }, key, studio).Where(_ => mail.UnderWay), words[mail.KeptApart == 1 ? "ConsentGivenKeptApart1" : "ConsentGivenKeptApartMany"], .. Next(mail with { KeptApart = 0, UnderWay = false }, key, studio).Where(_ => mail.Unsent || !mail.UnderWay)],
        ("ConsentGivenToStudent", { Unsent: false, UnderWay: false }) => [words["ConsentGivenBegin"]],
        ("ConsentGivenToStudent", { Unsent: false }) => [words["ConsentGivenUnderWay"]],
        ("ConsentGivenToStudent", { UnderWay: true }) => [words["ConsentGivenUnderWay"], words["ConsentGivenToStudentNext"]],
        _ => words[$"{key}Next", studio] is { ResourceNotFound: false } said ? [said.Value] : [],
    };

    private string Greeting(Mail mail) => Greeted(mail.Name) is { } name ? words["HelloName", name] : words["Hello"];

    // Reeds that can't be played as they came: what was seen, what to do at home, what becomes of them, and what was told by mistake. It says all of it without a sign-in.
    private MailSheet Unfit(Mail mail, string studio, string code)
    {
        var (own, name) = (mail.Ward is null, FirstName(mail.Ward) ?? words["SomeStudent"].Value);
        string[] mould = mail.Mouldy.Count == 0 ? [] : [Of("UnfitMould", mail.Mouldy), words[own ? "UnfitLook" : "UnfitLookWard"], Of("UnfitStays", mail.Mouldy)];
        string[] damp = mail.Damp.Count == 0 ? [] : [Of("UnfitDamp", mail.Damp), words[own ? "UnfitAir" : "UnfitAirWard"]];
        string[] mistaken = mail.NoMould.Count == 0 ? [] : [Of("UnfitNoMould", mail.NoMould)];
        var why = mistaken.Length > 0 && mould.Length + damp.Length == 0 ? (own ? "UnfitWhyMended" : "UnfitWhyWardMended") : own ? "UnfitWhy" : "UnfitWhyWard";
        return new MailSheet(
            mould.Length > 0 ? words[own ? "UnfitSubjectMould" : "UnfitSubjectMouldWard", code] : words[mistaken.Length > 0 ? "UnfitSubjectNoMould" : "UnfitSubjectDamp", code],
            Greeting(mail),
            [words[why, studio, code, name], .. mould, .. damp, .. mistaken],
            words["UnfitLink"],
            post.Link(MailPaths.Of(mail)!),
            [words["UnfitNotYou"]],
            studio,
            words["Foot", studio]);
    }

    private string Of(string key, IReadOnlyList<int> numbers) => numbers.Count == 1
        ? words[$"{key}1", numbers[0]]
        : words[$"{key}Many", words["AndLast", string.Join(", ", numbers.SkipLast(1)), numbers[^1]].Value];

    /// <summary>The first word of a name, when it is one: a greeting is no place for an address or anything else somebody typed.</summary>
    /// <param name="name">The whole name.</param>
    public static string? FirstName(string? name)
    {
        var first = (name ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries).FirstOrDefault();
        return first is { Length: <= LongestFirstName } && OneName().IsMatch(first) ? first : null;
    }

    // A guardian's answer is told in several ways: what it was, to the guardian or to the student.
    private static string KeyOf(Mail mail) => (mail.Kind, mail.What) switch
    {
        (MailKind.GuardianAnswered, "ConsentGiven" or "ConsentGivenAgain" or "ConsentWithdrawn" or "ConsentDeclined") => mail.What + (mail.Path is null or "/wards" ? "ToGuardian" : "ToStudent"),
        (MailKind.FoundOldEnough or MailKind.FoundYounger, _) => $"{mail.Kind}{(mail.Path == "/wards" ? "ToGuardian" : "ToStudent")}",
        (MailKind.News, _) when mail.Secret is not null => "NewsByLink",
        (MailKind.Begin, _) when mail.About is not null => "Return", // somebody whom the studio knows has begun before
        _ => mail.Kind.ToString(),
    };

    // Which news of a batch: a subject of its own for each, so that two mails are told apart in a list of them.
    private static string NewsKey(Mail mail) =>
        mail.What == Mail.Corrected ? "CorrectedOfBatch"
        : mail.Path!.StartsWith("/letters/", StringComparison.Ordinal) ? "LetterOfBatch"
        : "NewsOfBatch";

    // That reeds were posted is no letter: there is nothing to read yet, and something to look at.
    private static bool PostsReeds(Mail mail) => mail is { Kind: MailKind.News, Secret: null } && CodeIn(mail.Path) is not null && NewsKey(mail) == "NewsOfBatch";

    // What a reader is told of passing it on: a link that lets somebody in, or answers, does harm in other hands.
    private static string FootOf(Mail mail, bool brings) => mail.Kind switch
    {
        _ when brings => "FootPrivate",
        _ when mail.Secret is null => "Foot",
        MailKind.News => "FootPrivate",
        MailKind.Begin or MailKind.JoinAsStudent or MailKind.JoinAsTeacher or MailKind.NewPassword => "FootComesIn",
        MailKind.GuardianAsked => "FootAnswers",
        _ => "Foot",
    };

    private IEnumerable<string> Until(Mail mail)
    {
        if (mail is { Secret: not null, At: { } until })
        {
            yield return mail.Kind switch
            {
                MailKind.Begin => words["UntilOnOneDevice", Moment(until)],
                MailKind.News => words["UntilForWhoeverHasIt", Moment(until)],
                _ => words["Until", Moment(until)],
            };
        }
    }

    private string NoticeOf(string? what)
    {
        var said = words[$"Notice{what}"];
        return what is null || said.ResourceNotFound ? words["NoticeOther"].Value : said.Value;
    }

    private string Day(DateTimeOffset at) => time.There(at).ToString("d MMMM yyyy", Language.British);

    private string Moment(DateTimeOffset at)
    {
        var there = time.There(at);
        var zone = there.Offset == TimeSpan.Zero ? "UTC" : there.ToString("'UTC'zzz", Language.British);
        return $"{there.ToString("dddd, d MMMM yyyy, HH:mm", Language.British)} ({zone})";
    }

    private static string? CodeIn(string? path) =>
        path is not null && CodePath().Match(path) is { Success: true } match && BatchCode.Read(match.Groups["code"].Value) is Outcome<BatchCode>.Done(var code)
            ? code.ToString()
            : null;

    [GeneratedRegex(@"^/(batches|letters)/(?<code>[A-Za-z0-9-]+)")]
    private static partial Regex CodePath();

    // Written letters and what joins them: no dot, slash or digit makes a greeting look like a link.
    [GeneratedRegex(@"^[\p{L}\p{M}][\p{L}\p{M}'’-]*$")]
    private static partial Regex OneName();

    // Titles as they are written before a name in the languages of the neighbourhood.
    [GeneratedRegex(@"^(?:mrs|mr|ms|miss|mx|dr|prof|professor|doctor|sir|dame|lady|lord|rev|herr|frau|mme|mlle|m(?=\.)|madame|monsieur|mevr|mevrouw|dhr|sig|signor|signora|sr|sra|señor|señora|senhor|senhora|fru|pan|pani)\.?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Title();

    [GeneratedRegex(@"^\p{L}\.$")]
    private static partial Regex Initial();
}
