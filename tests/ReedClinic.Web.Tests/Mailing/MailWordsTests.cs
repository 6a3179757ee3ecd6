using System.Text;
using System.Text.RegularExpressions;
using AngleSharp.Html.Parser;
using MimeKit;
using ReedClinic.Data.Jobs;
using ReedClinic.Web.Mailing;
using Microsoft.Extensions.Time.Testing;

namespace ReedClinic.Web.Tests.Mailing;

/// <summary>What stands in a mail, and what doesn't.</summary>
public sealed partial class MailWordsTests
{
    private const string Secret = "N0-secret_of_forty-three_characters_0123456";

    private static readonly FakeTimeProvider Clock = new(new DateTimeOffset(2026, 3, 28, 9, 30, 0, TimeSpan.Zero));

    private static readonly MailSettings Settings = new()
    {
        Host = "mail.harbour.example",
        From = "reeds@harbour.example",
        ReplyTo = "ilse@harbour.example",
        Address = new Uri("https://reeds.harbour.example/"),
    };

    public static TheoryData<MailKind, string?, string?, string?> Mails => new()
    {
        { MailKind.NewPassword, Secret, null, "/account/new-password/" + Secret },
        { MailKind.NewEmail, Secret, null, "/account/new-email/" + Secret },
        { MailKind.JoinAsTeacher, Secret, null, "/join/" + Secret },
        { MailKind.JoinAsStudent, Secret, null, "/join/" + Secret },
        { MailKind.HaveAccount, null, null, "/account/sign-in" },
        { MailKind.Begin, Secret, null, "/begin/" + Secret },
        { MailKind.GuardianAsked, Secret, null, "/guardian/answer/" + Secret },
        { MailKind.GuardianAnswered, null, "/wards", "/wards" },
        { MailKind.FoundOldEnough, null, "/wards", "/wards" },
        { MailKind.FoundYounger, null, "/guardian", "/guardian" },
        { MailKind.GuardianGone, null, "/guardian", "/guardian" },
        { MailKind.Notice, null, null, "/account" },
        { MailKind.News, null, "/letters/2345-6789", "/letters/2345-6789" },
        { MailKind.Unfit, null, "/batches/2345-6789", "/batches/2345-6789" },
        { MailKind.LettingGo, null, "/account/sign-in", "/account/sign-in" },
        { MailKind.Erased, null, null, null },
        { MailKind.WardErased, null, "/wards", "/wards" },
    };

    [Fact]
    public void Every_kind_of_mail_is_tried_here() =>
        Assert.Equal(Enum.GetValues<MailKind>().Order(), Mails.Select(row => row.Data.Item1).Distinct().Order());

    [Theory]
    [MemberData(nameof(Mails))]
    public void Text_and_HTML_say_the_same_with_the_right_link_and_nothing_from_elsewhere(MailKind kind, string? secret, string? path, string? leads)
    {
        var mail = new Mail(kind, "ines@harbour.example", "Inês Calder") { Secret = secret, Path = path, At = Clock.GetUtcNow().AddDays(1), What = "PasswordChanged" };
        using var message = Sent(mail);
        using var html = new HtmlParser().ParseDocument(message.HtmlBody!);
        var (text, shown) = (Flat(message.TextBody!), Flat(html.Body!.TextContent));

        Assert.Equal(text, shown);
        Assert.Contains("Hello Inês,", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Calder", message.ToString(), StringComparison.Ordinal);
        Assert.Equal("en-GB", html.DocumentElement.GetAttribute("lang"));
        Assert.Empty(html.QuerySelectorAll("img, link, script, style, iframe, object, embed, form, [src], [background], [srcset]"));
        Assert.DoesNotContain("url(", message.HtmlBody, StringComparison.OrdinalIgnoreCase);
        var links = html.QuerySelectorAll("a").Select(a => a.GetAttribute("href")).ToList();
        Assert.Equal(leads is null ? [] : ["https://reeds.harbour.example" + leads], links);
        Assert.Equal(leads is not null, text.Contains($" https://reeds.harbour.example{leads} ", StringComparison.Ordinal));
        Assert.DoesNotContain("{0}", text, StringComparison.Ordinal);
        Assert.DoesNotContain(kind.ToString(), message.Subject, StringComparison.Ordinal); // a key that wasn't found shows itself
    }

    [Theory]
    [InlineData("ConsentGiven", "/wards", "You have agreed at Quay Reeds", "you agree that Pia sends reeds there", "take your consent back at any time")]
    [InlineData("ConsentGivenAgain", "/wards", "You have agreed again at Quay Reeds", "you agree again that Pia sends reeds there", "take your consent back at any time")]
    [InlineData("ConsentGivenAgain", "/batches", "Your guardian agrees again", "agrees again that you send reeds to Quay Reeds", "You can post what you have announced")]
    [InlineData("ConsentGiven", "/intake", "Your guardian has agreed", "agrees that you send reeds to Quay Reeds", "You can begin whenever you like.")]
    [InlineData("ConsentWithdrawn", "/wards", "You have taken your consent back at Quay Reeds", "you no longer agree that Pia sends reeds there", "tell them to post nothing")]
    [InlineData("ConsentWithdrawn", "/guardian", "Please post no reeds for now", "has taken their consent back: please post no reeds to Quay Reeds", "talk with them: they can agree again")]
    [InlineData("ConsentDeclined", null, "Your no is noted at Quay Reeds", "you don’t agree that Pia sends reeds there", "If you change your mind, they can ask you again")]
    [InlineData("ConsentDeclined", "/guardian", "Your guardian has said no for now", "says nothing about you or your reeds", "if they change their mind, you can ask them again after a day")]
    public void A_guardians_yes_and_no_are_told_apart_to_both_with_what_each_can_do(string what, string? path, string subject, string said, string next)
    {
        var mail = new Mail(MailKind.GuardianAnswered, "rosa@harbour.example", "Rosa Kestrel") { What = what, Path = path, Ward = path is null or "/wards" ? "Pia" : null, At = Clock.GetUtcNow() };
        using var message = Sent(mail);
        var text = Flat(message.TextBody!);

        Assert.Equal(subject, message.Subject);
        Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.Contains(next, text, StringComparison.Ordinal);
        Assert.Equal(path is not null, text.Contains($"https://reeds.harbour.example{path} ", StringComparison.Ordinal));
        Assert.Equal(path is null, !text.Contains("https://", StringComparison.Ordinal));
        Assert.DoesNotContain("Kestrel", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Mails))]
    public void A_mail_is_called_harmless_only_where_its_link_lets_nobody_in(MailKind kind, string? secret, string? path, string? leads)
    {
        using var message = Sent(new Mail(kind, "ines@harbour.example") { Secret = secret, Path = path, At = Clock.GetUtcNow().AddDays(1), What = "PasswordChanged" });
        var text = Flat(message.TextBody!);

        // The link of a new address asks for a sign-in, or the browser that asked for it.
        var letsIn = leads is not null && secret is not null && kind != MailKind.NewEmail;
        Assert.Equal(!letsIn, text.Contains("It holds nothing private", StringComparison.Ordinal));
        Assert.Equal(letsIn, text.Contains("please pass it on to nobody", StringComparison.Ordinal));
        Assert.Equal(letsIn && kind != MailKind.GuardianAsked, text.Contains("Whoever opens its link first comes in as you", StringComparison.Ordinal));
    }

    [Fact]
    public void Whoever_has_begun_before_is_asked_to_come_back_and_not_to_begin()
    {
        var mail = new Mail(MailKind.Begin, "ines@harbour.example") { Secret = Secret, At = Clock.GetUtcNow().AddDays(30) };
        using var first = Sent(mail);
        using var again = Sent(mail with { About = Guid.CreateVersion7(Clock.GetUtcNow()) });

        Assert.Equal(("Send your reeds to Quay Reeds", "Come back to your reeds at Quay Reeds"), (first.Subject, again.Subject));
        Assert.Contains("without making an account first. Begin here:", Flat(first.TextBody!), StringComparison.Ordinal);
        var text = Flat(again.TextBody!);
        Assert.Contains("Come back here: https://reeds.harbour.example/begin/" + Secret, text, StringComparison.Ordinal);
        Assert.DoesNotContain("without making an account", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Begin here", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Pia", "by Pia, who would like")]
    [InlineData("www.foreign.example", "by a student, who would like")]
    [InlineData(null, "by a student, who would like")]
    public void The_guardian_who_is_asked_is_told_the_first_name_as_the_student_was_promised(string? ward, string said)
    {
        using var message = Sent(new Mail(MailKind.GuardianAsked, "rosa@harbour.example", "Rosa") { Secret = Secret, Ward = ward, At = Clock.GetUtcNow() });

        Assert.Contains(said, Flat(message.TextBody!), StringComparison.Ordinal);
        Assert.DoesNotContain("foreign", message.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "/letters/7KP-W3MQ", true)]
    [InlineData(Secret, "/read/" + Secret, false)]
    public void Who_reads_a_corrected_letter_by_a_link_is_promised_nothing_that_the_link_does_not_open(string? secret, string leads, bool before)
    {
        using var message = Sent(new Mail(MailKind.News, "ines@harbour.example") { What = Mail.Corrected, Path = "/letters/7KP-W3MQ", Secret = secret, At = secret is null ? null : Clock.GetUtcNow().AddDays(30) });
        var text = Flat(message.TextBody!);

        Assert.Equal("Corrected letter about the batch 7KP-W3MQ", message.Subject);
        Assert.Contains("was corrected. What was put right stands above it", text, StringComparison.Ordinal);
        Assert.Contains($"https://reeds.harbour.example{leads} ", text, StringComparison.Ordinal);
        Assert.Equal(before, text.Contains("what was sent before", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("/batches/7KP-W3MQ", "Your reeds are on their way home: batch 7KP-W3MQ", "has posted the reeds of batch 7KP-W3MQ back to you")]
    [InlineData("/letters/7KP-W3MQ", "The letter about your batch 7KP-W3MQ", "about the reeds of batch 7KP-W3MQ is ready for you to read")]
    public void Mails_of_one_batch_say_in_their_subject_what_happened(string path, string subject, string why)
    {
        using var message = Sent(new Mail(MailKind.News, "ines@harbour.example") { Path = path });

        Assert.Equal(subject, message.Subject);
        Assert.Contains(why, Flat(message.TextBody!), StringComparison.Ordinal);
        Assert.Equal(path.StartsWith("/letters/", StringComparison.Ordinal), Flat(message.TextBody!).Contains("Read it here", StringComparison.Ordinal));
    }

    [Fact]
    public void A_link_for_a_new_password_says_nothing_of_a_password_that_may_not_be_there()
    {
        using var message = Sent(new Mail(MailKind.NewPassword, "ines@harbour.example") { Secret = Secret, At = Clock.GetUtcNow() });

        Assert.DoesNotContain("your password stays", Flat(message.TextBody!), StringComparison.Ordinal);
    }

    [Fact]
    public void It_has_what_RFC_5322_asks_for_and_says_that_a_machine_wrote_it()
    {
        var job = new Job { Id = Guid.Parse("019a0000-0000-7000-8000-00000000abcd") };
        using var first = Sent(new Mail(MailKind.Begin, "ines@harbour.example") { Secret = Secret, At = Clock.GetUtcNow() }, job: job);
        using var again = Sent(new Mail(MailKind.Begin, "ines@harbour.example") { Secret = Secret, At = Clock.GetUtcNow() }, job: job);

        Assert.Equal("019a000000007000800000000000abcd@harbour.example", first.MessageId);
        Assert.Equal(first.MessageId, again.MessageId);
        Assert.Equal(Clock.GetUtcNow(), first.Date);
        Assert.Equal("Quay Reeds", Assert.Single(first.From.Mailboxes).Name);
        Assert.Equal("ilse@harbour.example", Assert.Single(first.ReplyTo.Mailboxes).Address);
        Assert.Equal("auto-generated", first.Headers["Auto-Submitted"]); // RFC 3834, section 5
        Assert.Equal("alternative", first.Body!.ContentType.MediaSubtype);
    }

    [Theory]
    [InlineData("Inês Calder", "Inês")]
    [InlineData("Jean-Luc", "Jean-Luc")]
    [InlineData("D’Arcy Fen", "D’Arcy")]
    [InlineData("https://foreign.example/a", null)]
    [InlineData("foreign.example wins", null)]
    [InlineData("<b>Bold</b>", null)]
    [InlineData("12", null)]
    [InlineData("", null)]
    [InlineData(null, null)]
    public void A_greeting_takes_a_name_and_nothing_else(string? name, string? expected) => Assert.Equal(expected, MailWords.FirstName(name));

    [Fact]
    public void No_hostile_text_makes_a_header_a_second_receiver_or_markup()
    {
        var plain = Names(Raw(new Mail(MailKind.JoinAsStudent, "ines@harbour.example", "Ines") { Secret = Secret, At = Clock.GetUtcNow() }, "Quay Reeds"));
        Assert.True(HostileTexts.All.Count > 50);
        foreach (var vector in HostileTexts.All)
        {
            var raw = Raw(new Mail(MailKind.JoinAsStudent, "ines@harbour.example", vector.Text) { Secret = Secret, At = Clock.GetUtcNow(), What = vector.Text }, vector.Text);
            var names = Names(raw);
            Assert.True(plain.SequenceEqual(names), $"{vector}: {string.Join(' ', names)}");
            using var message = MimeMessage.Load(new MemoryStream(raw), TestContext.Current.CancellationToken);
            Assert.Equal("ines@harbour.example", Assert.Single(message.To.Mailboxes).Address);
            Assert.Equal("reeds@harbour.example", Assert.Single(message.From.Mailboxes).Address);
            Assert.Empty(message.Cc.Concat(message.Bcc));
            using var html = new HtmlParser().ParseDocument(message.HtmlBody!);
            Assert.True(html.QuerySelectorAll("script, img, iframe, svg, [onerror], [onload], [src]").Length == 0, vector.ToString());
            Assert.All(Encoding.ASCII.GetString(raw).Split("\r\n"), line => Assert.True(line.Length <= 998, vector.ToString()));
        }
    }

    [Fact]
    public void No_hostile_text_is_taken_for_an_address_that_is_written_to()
    {
        foreach (var vector in HostileTexts.All)
        {
            foreach (var address in new[] { vector.Text, $"{vector.Text}@harbour.example", $"ines@harbour.example{vector.Text}" })
            {
                using var message = Writer().Write(new Job(), new Mail(MailKind.HaveAccount, address), "Quay Reeds");
                Assert.True(message is null || message.To.Mailboxes.Single().Address == address, vector.ToString());
                Assert.True(message is null || !address.Any(char.IsControl), vector.ToString());
            }
        }
    }

    private static MailWriter Writer() => new(Settings, MailRig.Words(Settings, Clock), Clock);

    private static MimeMessage Sent(Mail mail, string studio = "Quay Reeds", Job? job = null)
    {
        var raw = Raw(mail, studio, job);
        return MimeMessage.Load(new MemoryStream(raw));
    }

    private static byte[] Raw(Mail mail, string studio, Job? job = null)
    {
        using var written = Writer().Write(job ?? new Job { Id = Guid.CreateVersion7(Clock.GetUtcNow()) }, mail, studio)!;
        written.Prepare(EncodingConstraint.SevenBit);
        using var stream = new MemoryStream();
        var format = FormatOptions.Default.Clone();
        format.NewLineFormat = NewLineFormat.Dos;
        written.WriteTo(format, stream);
        return stream.ToArray();
    }

    private static List<string> Names(byte[] raw)
    {
        var head = Encoding.ASCII.GetString(raw);
        return [.. head[..head.IndexOf("\r\n\r\n", StringComparison.Ordinal)].Split("\r\n").Where(line => line.Length > 0 && line[0] is not (' ' or '\t')).Select(line => line.Split(':')[0])];
    }

    private static string Flat(string text) => Space().Replace(text, " ").Trim();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
