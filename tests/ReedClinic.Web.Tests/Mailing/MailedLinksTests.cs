namespace ReedClinic.Web.Tests.Mailing;

/// <summary>Waiting for a mail that never comes ends with its reason instead of never.</summary>
public sealed class MailedLinksTests
{
    private static readonly TimeSpan Short = TimeSpan.FromMilliseconds(200);

    [Fact(Timeout = 120_000)]
    public async Task A_mail_that_never_comes_is_told_with_what_came_instead()
    {
        var ct = TestContext.Current.CancellationToken;
        var folder = Directory.CreateTempSubdirectory("reedclinic-post-");
        await File.WriteAllTextAsync(Path.Combine(folder.FullName, "1.eml"), "To: rosa@harbour.example\r\nSubject: Something else\r\n\r\nHello\r\n", ct);

        var mail = await Assert.ThrowsAsync<TimeoutException>(() => MailedLinks.MailAsync(folder.FullName, "pia@harbour.example", "It was deleted", ct, Short));
        var link = await Assert.ThrowsAsync<TimeoutException>(() => MailedLinks.PathAsync(folder.FullName, "pia@harbour.example", "/begin/", ct, Short));
        var found = await MailedLinks.MailAsync(folder.FullName, "rosa@harbour.example", "Something else", ct, Short);
        folder.Delete(recursive: true);

        Assert.Contains("“It was deleted” to pia@harbour.example", mail.Message, StringComparison.Ordinal);
        Assert.Contains("/begin/ to pia@harbour.example", link.Message, StringComparison.Ordinal);
        Assert.Contains("To: rosa@harbour.example; Subject: Something else", mail.Message, StringComparison.Ordinal);
        Assert.Contains("Hello", found, StringComparison.Ordinal);
    }
}
