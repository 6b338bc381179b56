using Foundress.Browser.Tests;

// One browser and one publish for all. Two visitors at a time (xunit.runner.json): each waits a fifth of the time.
[assembly: CollectionBehavior(CollectionBehavior.CollectionPerClass)]
[assembly: AssemblyFixture(typeof(PublishedApp))]
