using System.Text.RegularExpressions;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Jobs;
using ReedClinic.Web.Mailing;

namespace ReedClinic.Web.Tests.Mailing;

/// <summary>What a mail says on its occasion, and how it greets.</summary>
public sealed partial class MailOccasionsTests
{
    private static readonly FakeTimeProvider Clock = new(new DateTimeOffset(2026, 3, 28, 9, 30, 0, TimeSpan.Zero));

    private static readonly MailSettings Settings = new()
    {
        Host = "mail.harbour.example",
        From = "reeds@harbour.example",
        ReplyTo = "ilse@harbour.example",
        Address = new Uri("https://reeds.harbour.example/"),
    };

    [Theory]
    [InlineData(true, false, "look over what you have written, and send it", "is at the studio")]
    [InlineData(false, true, "what is at the studio is worked on from now on", "look over what you have written")]
    [InlineData(false, false, "You can begin whenever you like", "send it")]
    [InlineData(true, true, "For that there is nothing you have to do. What you have written isn’t sent by itself", "begin whenever")]
    public void A_yes_says_to_the_student_what_it_found_waiting_and_nothing_else(bool unsent, bool underWay, string said, string unsaid)
    {
        var sheet = Sheet(new Mail(MailKind.GuardianAnswered, "pia@harbour.example", "Pia") { What = "ConsentGiven", Path = "/batches", Unsent = unsent, UnderWay = underWay, At = Clock.GetUtcNow() });
        var text = Flat(sheet.ToText());

        Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.DoesNotContain(unsaid, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, null)]
    [InlineData(1, "A reed of yours came with mould: it stays in a closed bag")]
    [InlineData(2, "Reeds of yours came with mould: they stay in closed bags")]
    public void A_yes_says_to_the_student_what_stays_as_it_is(int keptApart, string? said)
    {
        var text = Flat(Sheet(new Mail(MailKind.GuardianAnswered, "pia@harbour.example", "Pia") { What = "ConsentGiven", Path = "/batches", UnderWay = true, KeptApart = keptApart, At = Clock.GetUtcNow() }).ToText());

        Assert.Equal(said is not null, text.Contains(said ?? "mould", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(MailKind.FoundYounger, null, "Your age was put right at Quay Reeds", "that you are below the age", "please post no reeds")]
    [InlineData(MailKind.FoundYounger, "Pia", "A student’s age was put right at Quay Reeds", "that Pia is below the age", "What you answered before counts again")]
    [InlineData(MailKind.FoundOldEnough, null, "Your age was put right at Quay Reeds", "that you are old enough", "nor sees your reeds")]
    [InlineData(MailKind.FoundOldEnough, "Pia", "A student’s age was put right at Quay Reeds", "that Pia is old enough", "nor sees their reeds")]
    public void An_age_that_was_put_right_is_told_to_each_as_what_it_is_to_them(MailKind kind, string? ward, string subject, string said, string next)
    {
        var sheet = Sheet(new Mail(kind, "pia@harbour.example", "Pia") { Ward = ward, Path = ward is null ? "/guardian" : "/wards", At = Clock.GetUtcNow() });
        var text = Flat(sheet.ToText());

        Assert.Equal(subject, sheet.Subject);
        Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.Contains(next, text, StringComparison.Ordinal);
        Assert.Equal(ward is null, !text.Contains("a student", StringComparison.OrdinalIgnoreCase) && !text.Contains("Pia is", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(null, new[] { 2 }, new int[0], "Please look at your other reeds before you play: batch 7KP-W3MQ", "There was mould on reed 2.", "Play none that has spots or a smell: mould can make you ill.", "Nobody plays it, works on it or posts it back", "You did nothing wrong")]
    [InlineData("Pia Kestrel", new[] { 1, 2, 4 }, new int[0], "Please look at the other reeds before one is played: batch 7KP-W3MQ", "There was mould on reeds 1, 2 and 4.", "the reeds that Pia sent", "Nobody plays them, works on them or posts them back", "please look with them")]
    [InlineData(null, new int[0], new[] { 3 }, "Reeds that dry first: batch 7KP-W3MQ", "Reed 3 was damp.", "looked at once more before anybody plays it", "the reeds you have at home dry in the open", "batch 7KP-W3MQ")]
    [InlineData("Pia", new[] { 1 }, new[] { 2, 3 }, "Please look at the other reeds before one is played: batch 7KP-W3MQ", "There was mould on reed 1.", "Reeds 2 and 3 were damp.", "the reeds at home dry in the open", "Nobody did anything wrong")]
    public void What_keeps_a_reed_from_being_played_is_told_with_what_to_look_at_and_what_becomes_of_it(string? ward, int[] mouldy, int[] damp, string subject, string seen, string second, string third, string fourth)
    {
        var sheet = Sheet(new Mail(MailKind.Unfit, "ines@harbour.example", "Inês Calder") { Path = "/batches/7KP-W3MQ", Ward = ward, Mouldy = mouldy, Damp = damp });
        var text = Flat(sheet.ToText());

        Assert.Equal(subject, sheet.Subject);
        Assert.All([seen, second, third, fourth], said => Assert.Contains(said, text, StringComparison.Ordinal));
        Assert.Equal(mouldy.Length > 0, text.Contains("mould", StringComparison.Ordinal));
        Assert.Equal(damp.Length > 0, text.Contains("damp", StringComparison.Ordinal));
        Assert.Equal(ward is null, text.Contains("your reeds, batch", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(null, new int[0], new[] { 2 }, "No mould after all: batch 7KP-W3MQ", "Quay Reeds has put right what was noted of your reeds, batch 7KP-W3MQ.", "Mould on reed 2 was noted by mistake.")]
    [InlineData("Pia Kestrel", new int[0], new[] { 1, 3 }, "No mould after all: batch 7KP-W3MQ", "the reeds that Pia sent, batch 7KP-W3MQ.", "Mould on reeds 1 and 3 was noted by mistake.")]
    [InlineData(null, new[] { 1 }, new[] { 2 }, "Please look at your other reeds before you play: batch 7KP-W3MQ", "There was mould on reed 1.", "Mould on reed 2 was noted by mistake.")]
    public void Mould_that_was_told_by_mistake_is_taken_back_beside_what_stands(string? ward, int[] mouldy, int[] noMould, string subject, string first, string second)
    {
        var sheet = Sheet(new Mail(MailKind.Unfit, "ines@harbour.example", "Inês Calder") { Path = "/batches/7KP-W3MQ", Ward = ward, Mouldy = mouldy, NoMould = noMould });
        var text = Flat(sheet.ToText());

        Assert.Equal(subject, sheet.Subject);
        Assert.Contains(first, text, StringComparison.Ordinal);
        Assert.Contains(second, text, StringComparison.Ordinal);
        Assert.Equal(mouldy.Length > 0, text.Contains("look in good light", StringComparison.Ordinal));
        Assert.Equal(mouldy.Length > 0, text.Contains("has unpacked", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Mrs Rook", "Mrs Rook")]
    [InlineData("Mr. Piet van der Rook", "Mr. Piet van der Rook")]
    [InlineData("Dr J. Rook", "Dr J. Rook")]
    [InlineData("Frau Dr. Holt", "Frau Dr. Holt")]
    [InlineData("M. Rook", "M. Rook")]
    [InlineData("Mme D’Arcy", "Mme D’Arcy")]
    [InlineData("Missy Rook", "Missy")]
    [InlineData("Drew Rook", "Drew")]
    [InlineData("Inês Calder", "Inês")]
    [InlineData("Mrs", null)]
    [InlineData("Mrs https://foreign.example/a", null)]
    [InlineData("Dr foreign.example wins", null)]
    [InlineData("Mr <b>Bold</b>", null)]
    [InlineData(null, null)]
    public void Whoever_gave_a_title_is_greeted_by_the_whole_name(string? name, string? expected)
    {
        Assert.Equal(expected, MailWords.Greeted(name));
        var sheet = Sheet(new Mail(MailKind.Notice, "rook@harbour.example", name) { At = Clock.GetUtcNow() });
        Assert.StartsWith(expected is null ? "Hello," : $"Hello {expected},", sheet.ToText().TrimStart(), StringComparison.Ordinal);
    }

    private static MailSheet Sheet(Mail mail) => MailRig.Words(Settings, Clock).For(mail, "Quay Reeds");

    private static string Flat(string text) => Space().Replace(text, " ").Trim();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
