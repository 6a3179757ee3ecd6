using System.Globalization;
using System.Text;
using MimeKit;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Web.Features.Letters;

namespace ReedClinic.Web.Mailing;

/// <summary>Makes a mail that can be sent (RFC 5322, RFC 2045 to 2047) of its words.</summary>
/// <param name="settings">Who it comes from.</param>
/// <param name="words">Its words.</param>
/// <param name="time">The clock.</param>
public sealed class MailWriter(MailSettings settings, MailWords words, TimeProvider time)
{
    private const int LongestName = 80;
    private const int LongestSubject = 150;

    /// <summary>
    /// Writes it. The same job always gives the same Message-ID, so that a repeated mail can be known as one; but where each try
    /// has a link of its own, each is another message (RFC 5322, 3.6.4), and whoever keeps only one of two must not keep the first.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="mail">What it is about.</param>
    /// <param name="studio">What the studio is called.</param>
    /// <param name="letter">The letter that goes along as a PDF; null for none.</param>
    /// <returns>The message; null when the address is none that mail can be sent to.</returns>
    public MimeMessage? Write(Job job, Mail mail, string studio, SentLetter? letter = null)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(mail);
        var name = OneLine(studio, LongestName);
        if (!MailboxAddress.TryParse(mail.To, out var parsed) || parsed.Address != mail.To)
        {
            return null;
        }

        var sheet = words.For(mail, name, letter is not null);
        var message = new MimeMessage
        {
            MessageId = $"{job.Id:N}{(mail is { Kind: MailKind.News, Secret: not null } ? $".{job.Attempts}" : "")}@{settings.From[(settings.From.LastIndexOf('@') + 1)..]}",
            Date = time.GetUtcNow(),
            Subject = OneLine(sheet.Subject, LongestSubject),
            Body = With(letter, new MultipartAlternative(Part("plain", sheet.ToText()), Part("html", sheet.ToHtml()))),
        };
        message.From.Add(new MailboxAddress(Encoding.UTF8, name, settings.From));
        message.ReplyTo.Add(new MailboxAddress(Encoding.UTF8, name, settings.ReplyTo));
        message.To.Add(new MailboxAddress(null, mail.To));
        message.Headers.Add("Auto-Submitted", "auto-generated"); // RFC 3834, section 5
        return message;
    }

    /// <summary>A name that can stand in a header: one line, and nothing that turns or hides what is written.</summary>
    /// <param name="text">The name.</param>
    /// <param name="longest">The most characters.</param>
    public static string OneLine(string text, int longest)
    {
        var line = new StringBuilder();
        foreach (var rune in (text ?? "").EnumerateRunes())
        {
            var shown = Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned
                ? new Rune(' ')
                : rune;
            if (line.Length + shown.Utf16SequenceLength > longest)
            {
                break;
            }

            line.Append(shown.ToString());
        }

        return line.ToString().Trim();
    }

    // The words first, then the file that they tell of (RFC 2046, 5.1.3; RFC 2183, 2.2).
    private MimeEntity With(SentLetter? letter, MimeEntity sheet)
    {
        if (letter is null)
        {
            return sheet;
        }

        var file = new MimePart(SentLetterFile.Type)
        {
            Content = new MimeContent(new MemoryStream(SentLetterFile.Pdf(letter, time.LocalTimeZone))),
            ContentDisposition = new ContentDisposition(ContentDisposition.Attachment),
            ContentTransferEncoding = ContentEncoding.Base64,
            FileName = SentLetterFile.Name(letter),
        };
        return new Multipart("mixed") { sheet, file };
    }

    // Quoted-printable keeps every line far below the 998 octets that RFC 5322 (2.1.1) allows.
    private static TextPart Part(string kind, string text)
    {
        var part = new TextPart(kind);
        part.SetText(Encoding.UTF8, text);
        part.ContentTransferEncoding = ContentEncoding.QuotedPrintable;
        return part;
    }
}
