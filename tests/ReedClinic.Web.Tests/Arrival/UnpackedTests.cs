using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Arrival;

/// <summary>What a student reads of their reeds once the parcel is open.</summary>
public sealed class UnpackedTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_reed_with_mould_and_a_damp_one_are_told_at_once_and_nobody_says_that_all_are_played()
    {
        using var student = await host.Student("Sjoukje");
        var parcel = await host.Announce("Sjoukje", "red thread", "blue thread", "white thread");
        using var teacher = await host.Teacher();
        var form = await Form.At(teacher, $"/batches/{parcel.Batch.Code}/arrival");
        foreach (var (reed, fitness) in new[] { (1, "Fit"), (2, "Mould"), (3, "DryFirst") })
        {
            form.Set($"Form.Reeds[{reed}].Presence", "Here").Set($"Form.Reeds[{reed}].Fitness", fitness);
        }

        using var saved = await form.Post();
        Assert.Contains("please tell whoever sent them about the mould or the damp", (await teacher.See($"/batches/{parcel.Batch.Code}/arrival")).Page, StringComparison.Ordinal);
        var (_, page, _) = await student.See($"/batches/{parcel.Batch.Code}");

        var reeds = page.Split("<h3>").Skip(1).ToList();
        Assert.DoesNotContain("when it was unpacked", reeds[0], StringComparison.Ordinal);
        Assert.Contains("There was mould on it when it was unpacked", reeds[1], StringComparison.Ordinal);
        Assert.Contains("It was damp when it was unpacked", reeds[2], StringComparison.Ordinal);
        Assert.DoesNotContain("You did nothing wrong", (await teacher.See($"/batches/{parcel.Batch.Code}")).Page, StringComparison.Ordinal);
        Assert.InRange(page.IndexOf("There was mould on reed 2.", StringComparison.Ordinal), 0, page.IndexOf("Where your reeds are", StringComparison.Ordinal));
        Assert.Contains("Nobody plays it, works on it or posts it back", page, StringComparison.Ordinal);
        Assert.Contains("Reed 2 came with mould", page[page.IndexOf("What happens next", StringComparison.Ordinal)..], StringComparison.Ordinal);
        Assert.Contains("Reed 2 came with mould", (await student.See("/batches")).Page, StringComparison.Ordinal);
        Assert.Contains("Reed 3 was damp: it dries first", (await student.See("/")).Page, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"caution unfit\"", (await teacher.See($"/batches/{parcel.Batch.Code}")).Page, StringComparison.Ordinal);
        Assert.Contains("every one that is there and fit to be played is tried", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_said_of_their_own_body_stays_when_the_parcel_is_open_and_what_is_said_of_posting_goes()
    {
        using var student = await host.Student("Hiltje");
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        await walk.Answer("reed/1/bothers", ("Reeds[0].Bothers", "It makes my lips numb, and may I scrape it before I send it?"));
        var path = $"/batches/{await walk.Send()}";
        Assert.Contains("feel numb", (await student.See(path)).Page, StringComparison.Ordinal);

        using var teacher = await host.Teacher();
        using var saved = await (await Form.At(teacher, $"{path}/arrival")).Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[1].Fitness", "Fit").Post();
        var (_, page, _) = await student.See(path);

        Assert.Contains("feel numb", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Please send it as it is", page, StringComparison.Ordinal);
    }
}
