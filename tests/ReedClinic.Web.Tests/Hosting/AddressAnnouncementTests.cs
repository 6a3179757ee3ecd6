using Microsoft.Extensions.Configuration;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Tests.Hosting;

/// <summary>What the program says of the way to it, once it listens.</summary>
public sealed class AddressAnnouncementTests
{
    [Theory]
    [InlineData(null, null, "false", "put a proxy that speaks https in front of it and name it in Web:Proxies")]
    [InlineData("127.0.0.1", "https://reeds.home.arpa", "false", "People reach it over https, by the proxy at 127.0.0.1, as https://reeds.home.arpa.")]
    [InlineData("127.0.0.1", null, "false", "by the proxy at 127.0.0.1.")]
    [InlineData("127.0.0.1", null, "true", "by plain http to a browser on this machine")]
    public void Whoever_has_named_a_proxy_is_not_told_to_name_one(string? proxies, string? address, string loopback, string expected)
    {
        var settings = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["Web:Proxies"] = proxies,
            ["Web:Address"] = address,
            ["Web:PlainHttpOnLoopback"] = loopback,
        }).Build();

        Assert.Contains(expected, AddressAnnouncement.HowItIsReached(settings), StringComparison.Ordinal);
    }
}
