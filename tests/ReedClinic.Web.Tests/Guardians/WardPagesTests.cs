using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Guardians;

/// <summary>What a guardian reads on their own pages, and what their student reads of them.</summary>
public sealed class WardPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task What_there_is_none_of_is_said_in_words_and_not_counted()
    {
        var (guardian, ward) = await host.AgreedAsync(await host.YoungerAsync("Aslaug Vale"), ClinicHost.NewEmail("rosa"));

        Assert.Contains("Name and address. No reeds were sent yet.", await guardian.TextAsync(ward), StringComparison.Ordinal);
        Assert.Contains("No reeds were sent yet.", await guardian.TextAsync("/wards"), StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\b0 ", Said(await guardian.TextAsync(ward)) + Said(await guardian.TextAsync("/wards")));
    }

    [Fact]
    public async Task What_there_is_stands_in_one_sentence_and_a_letter_to_come_is_told()
    {
        var student = await host.YoungerAsync("Birte Vale");
        var (guardian, ward) = await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"));
        await host.Announce("Birte Vale", "red thread", "blue thread");
        await IntakeWalk.Begin(student);

        var page = await guardian.TextAsync(ward);

        Assert.Contains("Name and address, one batch with 2 reeds and what was said about it, and one description that isn’t sent yet", page, StringComparison.Ordinal);
        using var document = new HtmlParser().ParseDocument(page);
        Assert.Equal("none yet", document.QuerySelector("td[data-label=Letter]")!.TextContent.Trim());
    }

    [Fact]
    public async Task A_batch_speaks_to_a_guardian_of_the_student_and_leads_back_to_their_page()
    {
        var student = await host.YoungerAsync("Cilla Vale");
        var (guardian, ward) = await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"));
        var path = $"/batches/{(await host.Announce("Cilla Vale", "red thread")).Batch.Code}";

        var theirs = Said(await guardian.TextAsync($"{path}?sent=yes"));
        var own = Said(await student.TextAsync(path));

        Assert.Contains("Where the reeds are", theirs, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\b[Yy]ours? (reed|batch|letter)", theirs);
        Assert.Contains($"href=\"{ward}\"", theirs, StringComparison.Ordinal);
        Assert.Contains("Where your reeds are", own, StringComparison.Ordinal);
        Assert.DoesNotContain("/wards/", own, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Consent_that_was_taken_back_by_mistake_is_given_again_where_it_was_taken()
    {
        var student = await host.YoungerAsync("Dagny Vale");
        var (guardian, ward) = await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"));
        using var taken = await Form.Named(guardian, ward, (await guardian.See(ward)).Page, "consent").Set("Consent", "Withdraw").Post();
        Assert.Contains("If you didn’t mean to, press “I agree again” below", await guardian.TextAsync(taken.Leads()!), StringComparison.Ordinal);

        using var given = await Form.Named(guardian, ward, (await guardian.See(ward)).Page, "consent").Set("Consent", "Give").Post();

        Assert.Contains("can go on where they stopped", await guardian.TextAsync(given.Leads()!), StringComparison.Ordinal);
        Assert.DoesNotContain("That is noted", await guardian.TextAsync(ward), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_noted_is_said_only_while_it_still_stands()
    {
        var (guardian, ward) = await host.AgreedAsync(await host.YoungerAsync("Frode Vale"), ClinicHost.NewEmail("rosa"));
        using var taken = await Form.Named(guardian, ward, (await guardian.See(ward)).Page, "consent").Set("Consent", "Withdraw").Post();
        Assert.Equal($"{ward}?done=withdrawn", taken.Leads());
        using var given = await Form.Named(guardian, ward, (await guardian.See(ward)).Page, "consent").Set("Consent", "Give").Post();
        Assert.Equal($"{ward}?done=given", given.Leads());

        Assert.Contains("That is noted", await guardian.TextAsync(given.Leads()!), StringComparison.Ordinal);
        foreach (var done in new[] { "withdrawn", "yes", "", "else" })
        {
            Assert.DoesNotContain("That is noted", await guardian.TextAsync($"{ward}?done={done}"), StringComparison.Ordinal);
        }

        using var again = await Form.Named(guardian, ward, (await guardian.See(ward)).Page, "consent").Set("Consent", "Withdraw").Post();
        Assert.DoesNotContain("That is noted", await guardian.TextAsync(given.Leads()!), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_younger_student_reads_who_agreed_for_them()
    {
        var student = await host.YoungerAsync("Edle Vale");
        await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"), "Rosa Harbour");

        Assert.Contains("Your guardian, <bdi>Rosa Harbour</bdi>, has agreed.", await student.TextAsync("/guardian"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_of_a_grown_student_is_called_by_their_age_and_a_younger_ones_by_the_guardian()
    {
        using var grown = new HtmlParser().ParseDocument((await (await host.Student("Grete")).See("/guardian")).Page);
        using var young = new HtmlParser().ParseDocument((await (await host.YoungerAsync("Hella")).See("/guardian")).Page);

        Assert.Equal(("Your age", "Your age"), (grown.Title, grown.QuerySelector("h1")!.TextContent));
        Assert.Equal(("Your guardian", "Your guardian"), (young.Title, young.QuerySelector("h1")!.TextContent));
    }

    private static string Said(string page) => page[page.IndexOf("<main", StringComparison.Ordinal)..page.IndexOf("</main", StringComparison.Ordinal)];
}
